/** Liquid water: enthalpy, density and specific heat, fresh or of a salt-chlorinated pool. */
package heatwake.analysis.water;
