/** What can be wrong with a simulated site, and how badly. */
package heatwake.dashboard.demo.plant.fault;
