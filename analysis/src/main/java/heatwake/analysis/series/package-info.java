/** What was recorded: readings by channel, what happened to the recording, and notes. */
package heatwake.analysis.series;
