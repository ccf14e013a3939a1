/** Everything that touches a wire or a file of readings. */
package heatwake.collector;
