/** Rules about the heater's control: starts, rests, stop at the set temperature. */
package heatwake.analysis.rule.control;
