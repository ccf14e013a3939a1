/** The start-up list: each check looks at the evidence of a run for one step of a start-up. */
package heatwake.analysis.startup;
