/** A whole run: a simulated site and its probes, played from beginning to end. */
package heatwake.dashboard.demo.plant.night;
