package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;

/**
 * Readings of one channel that cannot be of what it measures.
 *
 * @param startMs the first of them
 * @param endMs the last of them
 * @param text what they said
 */
record FaultyReadings(Channel channel, Severity severity, long startMs, long endMs, String text) {}
