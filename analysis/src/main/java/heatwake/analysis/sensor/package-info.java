/**
 * From what a raw sensor loop reports (ohms, millivolts, milliamperes, counts) to the quantity at
 * its place, or to a fault in plain words.
 */
package heatwake.analysis.sensor;
