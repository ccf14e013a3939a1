/** Everything at once, with faults at random, counted on the sending side. */
package heatwake.collector.soak;
