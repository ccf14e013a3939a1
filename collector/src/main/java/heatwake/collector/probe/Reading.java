package heatwake.collector.probe;

import heatwake.analysis.quantity.Channel;

/**
 * One reading on its way to the store.
 *
 * @param channel what was measured
 * @param timeMs when, UTC milliseconds
 * @param value in the channel's stored unit; finite
 * @param stampedByProbe whether the probe gave the time; otherwise it is the moment of arrival, and
 *     two readings that arrive in one millisecond are both kept, one a millisecond later
 */
public record Reading(Channel channel, long timeMs, double value, boolean stampedByProbe) {}
