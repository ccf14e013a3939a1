package heatwake.collector.store;

import java.util.OptionalLong;

/**
 * What a run is called by.
 *
 * @param id number in this store
 * @param site name of the site
 * @param shown what to call the site in a list, so that sites whose rigs name none are told apart
 * @param startMs first moment, UTC milliseconds
 * @param endMs last moment; empty while it is being recorded
 */
public record RunHeading(long id, String site, String shown, long startMs, OptionalLong endMs) {
  /** A run of a site that no other is called like. */
  public RunHeading(long id, String site, long startMs, OptionalLong endMs) {
    this(id, site, site, startMs, endMs);
  }
}
