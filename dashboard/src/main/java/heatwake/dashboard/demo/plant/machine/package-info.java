/** The simulated heater: refrigerant cycle, air coil, controller and supply. */
package heatwake.dashboard.demo.plant.machine;
