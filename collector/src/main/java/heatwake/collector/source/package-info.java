/** From the sources a rig names to sources that read. */
package heatwake.collector.source;
