/** The report of a run as a PDF: for the customer's file. */
package heatwake.dashboard.report;
