/** Charts of a run, painted alike on the screen, into pictures and onto the report's pages. */
package heatwake.dashboard.chart;
