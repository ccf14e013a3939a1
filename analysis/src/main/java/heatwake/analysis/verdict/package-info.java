/** From flags and figures to whose side the trouble is on. */
package heatwake.analysis.verdict;
