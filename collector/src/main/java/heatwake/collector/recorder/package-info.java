/**
 * Takes what sources deliver and brings it to disk: group commits, back-pressure, events of the
 * recording itself, crash recovery.
 */
package heatwake.collector.recorder;
