/** The other end of a wire in tests: programs of the machine, and an intake that remembers. */
package heatwake.collector.peer;
