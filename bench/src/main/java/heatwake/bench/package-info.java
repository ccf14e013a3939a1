/** Benchmarks of what is computed at every reading of a run. */
package heatwake.bench;
