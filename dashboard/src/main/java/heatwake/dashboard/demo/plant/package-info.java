/**
 * A simulated pool, pump and heat-pump water heater, written from the physics. It shares nothing
 * with the analysis: its properties, balances and constants are its own, so that the two can judge
 * each other. Temperatures are in degrees Celsius, everything else in SI.
 */
package heatwake.dashboard.demo.plant;
