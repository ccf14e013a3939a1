/** Findings and recordings as words and figures for people. Knows no window and no page. */
package heatwake.dashboard.present;
