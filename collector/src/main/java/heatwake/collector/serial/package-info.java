/** Serial lines: finding ports, holding on to them, reading their lines. */
package heatwake.collector.serial;
