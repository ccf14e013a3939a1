/** Rules about the refrigerant circuit. */
package heatwake.analysis.rule.refrigerant;
