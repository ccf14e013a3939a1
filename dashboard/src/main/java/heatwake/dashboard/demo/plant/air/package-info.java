/** Outdoor air around the simulated site: its moisture and its weather. */
package heatwake.dashboard.demo.plant.air;
