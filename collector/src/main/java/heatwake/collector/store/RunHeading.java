package heatwake.collector.store;

import java.util.OptionalLong;

/**
 * What a run is called by.
 *
 * @param id number in this store
 * @param site name of the site
 * @param startMs first moment, UTC milliseconds
 * @param endMs last moment; empty while it is being recorded
 */
public record RunHeading(long id, String site, long startMs, OptionalLong endMs) {}
