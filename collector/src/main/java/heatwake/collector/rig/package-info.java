/** Rig files: what is clipped where, and where readings come from. */
package heatwake.collector.rig;
