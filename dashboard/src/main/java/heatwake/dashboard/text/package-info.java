/** Findings as plain text for a terminal. */
package heatwake.dashboard.text;
