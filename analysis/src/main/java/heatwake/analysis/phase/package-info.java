/** What the heater was doing at each instant, and its cycles. */
package heatwake.analysis.phase;
