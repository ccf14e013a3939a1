/** What an analysis found: the records that every output is made from. */
package heatwake.analysis.finding;
