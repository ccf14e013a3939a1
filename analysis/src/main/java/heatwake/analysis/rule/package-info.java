/** Rules: each looks at the evidence of a run for one trouble. One file each. */
package heatwake.analysis.rule;
