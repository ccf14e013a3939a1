/** The heater at duty: its steady figures with their uncertainties, as rules compare them. */
package heatwake.analysis.duty;
