/** What people meet: command line, window, report, demo. */
package heatwake.dashboard;
