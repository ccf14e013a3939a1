/**
 * The scored bench: simulated runs with the truth beside them, and how well the analysis does on
 * them. See docs/bench.md.
 */
package heatwake.dashboard.score;
