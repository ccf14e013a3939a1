/** The command line: one class a command. */
package heatwake.dashboard.command;
