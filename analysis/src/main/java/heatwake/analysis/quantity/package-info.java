/** Quantities, their units and the channels they are measured on. */
package heatwake.analysis.quantity;
