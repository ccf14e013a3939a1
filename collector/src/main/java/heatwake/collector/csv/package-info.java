/** Runs as CSV files, in and out. */
package heatwake.collector.csv;
