/** The demo: a simulated site whose probes are recorded like real ones. */
package heatwake.dashboard.demo;
