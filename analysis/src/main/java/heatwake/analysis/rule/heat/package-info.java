/** Rules about heat and coefficient of performance against the nameplate. */
package heatwake.analysis.rule.heat;
