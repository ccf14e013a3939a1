/** Files that commands write: never one they read, and whole or not at all. */
package heatwake.dashboard.output;
