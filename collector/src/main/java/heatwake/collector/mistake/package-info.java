/** How a caller's mistake is told. */
package heatwake.collector.mistake;
