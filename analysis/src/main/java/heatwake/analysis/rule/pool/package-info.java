/** Rules about the pool itself. */
package heatwake.analysis.rule.pool;
