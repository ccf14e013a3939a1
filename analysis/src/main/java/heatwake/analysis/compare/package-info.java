/** Two runs of one heater, put on equal conditions. */
package heatwake.analysis.compare;
