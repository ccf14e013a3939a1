/** Rules about the water side: flow, filter, condenser. */
package heatwake.analysis.rule.water;
