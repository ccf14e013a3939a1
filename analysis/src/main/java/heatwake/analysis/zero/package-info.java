/** The zero of the temperature pair, taken in place while water circulates at rest. */
package heatwake.analysis.zero;
