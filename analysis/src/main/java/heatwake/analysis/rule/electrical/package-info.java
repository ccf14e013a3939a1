/** Rules about the electric side: supply, current, a compressor that does not start. */
package heatwake.analysis.rule.electrical;
