/** Saturation properties of the refrigerants met in pool heat pumps. */
package heatwake.analysis.refrigerant;
