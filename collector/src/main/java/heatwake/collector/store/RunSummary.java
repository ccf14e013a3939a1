package heatwake.collector.store;

import java.util.OptionalLong;

/**
 * A run in the list of runs.
 *
 * @param id number in this store
 * @param site name of the site
 * @param startMs first moment, UTC milliseconds
 * @param endMs last moment; empty while it is being recorded
 * @param readings readings stored
 */
public record RunSummary(long id, String site, long startMs, OptionalLong endMs, long readings) {}
