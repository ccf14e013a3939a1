/** How well each channel of a run was recorded. */
package heatwake.analysis.coverage;
