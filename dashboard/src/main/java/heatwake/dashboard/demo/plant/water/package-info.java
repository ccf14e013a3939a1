/** The water side of the simulated site: water, pipes, pump, filter, bypass, and the pool. */
package heatwake.dashboard.demo.plant.water;
