/** Simulated probes: error, noise, lag, resolution, sampling and faults of their own. */
package heatwake.dashboard.demo.plant.sensor;
