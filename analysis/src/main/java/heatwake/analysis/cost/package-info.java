/** What the heat costs. */
package heatwake.analysis.cost;
