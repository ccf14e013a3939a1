package heatwake.collector.store;

import java.util.OptionalLong;

/**
 * A run in the list of runs.
 *
 * @param id number in this store
 * @param site name of the site
 * @param shown what to call the site in a list, so that sites whose rigs name none are told apart
 * @param startMs first moment, UTC milliseconds
 * @param endMs last moment; empty while it is being recorded
 * @param readings readings stored
 */
public record RunSummary(
    long id, String site, String shown, long startMs, OptionalLong endMs, long readings) {
  /** A run of a site that no other is called like. */
  public RunSummary(long id, String site, long startMs, OptionalLong endMs, long readings) {
    this(id, site, site, startMs, endMs, readings);
  }
}
