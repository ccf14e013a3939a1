package heatwake.analysis.series;

import heatwake.analysis.quantity.Channel;

/**
 * Readings that are stored with a run but take no part in it, because their stamps cannot be right.
 *
 * @param channel what was measured
 * @param readings how many
 * @param exampleMs one of their stamps, UTC milliseconds
 */
public record StampsLeftOut(Channel channel, long readings, long exampleMs) {}
