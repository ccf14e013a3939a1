/** Findings as the JSON that scripts rely on. */
package heatwake.dashboard.json;
