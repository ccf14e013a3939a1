/** Water through the heater: whether it moves, how much, and how that was found out. */
package heatwake.analysis.flow;
