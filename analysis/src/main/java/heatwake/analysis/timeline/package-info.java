/** All channels of a run brought onto one even grid of instants. */
package heatwake.analysis.timeline;
