/**
 * Runs in an SQLite file: what the probes said and what happened to the recording, nothing derived.
 */
package heatwake.collector.store;
