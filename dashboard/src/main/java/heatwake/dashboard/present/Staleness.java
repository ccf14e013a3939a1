package heatwake.dashboard.present;

import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;

/** Whether the last reading of a channel still speaks for now. */
final class Staleness {
  /** A probe read once a second may miss a few readings before anybody need know; ours. */
  private static final long LEAST_MS = 10_000;

  private Staleness() {}

  static long ageMs(Series series, long nowMs) {
    return Math.max(0, nowMs - series.timeMs(series.size() - 1));
  }

  /** Older than the time after which the analysis speaks of a gap. */
  static boolean isStale(Series series, long nowMs) {
    long longestMs = Timeline.GAP_INTERVALS * Timeline.usualIntervalMs(series);
    return ageMs(series, nowMs) > Math.max(LEAST_MS, longestMs);
  }
}
