/** The refrigerant circuit as its probes show it. */
package heatwake.analysis.circuit;
