/** Readings that a measurement flag accuses, and what becomes of the figures that rest on them. */
package heatwake.analysis.doubt;
