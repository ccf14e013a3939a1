/** What the nameplate promises at conditions other than its own. */
package heatwake.analysis.expected;
