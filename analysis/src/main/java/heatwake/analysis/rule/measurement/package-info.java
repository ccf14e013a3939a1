/** Rules about the measurement itself: the first suspect. */
package heatwake.analysis.rule.measurement;
