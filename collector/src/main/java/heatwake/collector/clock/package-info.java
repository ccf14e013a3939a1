/** Jumps of a logger's clock, seen while recording or in an imported file. */
package heatwake.collector.clock;
