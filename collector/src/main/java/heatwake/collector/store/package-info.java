/**
 * Runs in an SQLite file: what the probes said and what happened to the recording, nothing derived;
 * and what a broker may say again.
 */
package heatwake.collector.store;
