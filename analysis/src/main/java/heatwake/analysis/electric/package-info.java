/** Electric power and energy of the heater. */
package heatwake.analysis.electric;
