/** What every source of readings has in common. Each kind of source has a package of its own. */
package heatwake.collector.probe;
