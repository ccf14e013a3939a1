/** Steady spans of a run and their mean figures. */
package heatwake.analysis.steady;
