package heatwake.dashboard.chart;

/**
 * A stretch of time that is looked at.
 *
 * @param fromMs first instant, UTC milliseconds
 * @param toMs last instant, later than the first
 */
public record TimeRange(long fromMs, long toMs) {
  /** Nothing shorter than this can be told apart on a chart of probe readings. */
  public static final long SHORTEST_MS = 10_000;

  public TimeRange {
    if (toMs <= fromMs) {
      throw new IllegalArgumentException("a time range must have a length: " + fromMs + " " + toMs);
    }
  }

  /** The range from one moment to another in whichever order, made at least the shortest length. */
  public static TimeRange between(long oneMs, long otherMs) {
    long from = Math.min(oneMs, otherMs);
    long to = Math.max(oneMs, otherMs);
    long lacking = Math.max(0, SHORTEST_MS - (to - from));
    return new TimeRange(from - lacking / 2, to + (lacking - lacking / 2));
  }

  public long lengthMs() {
    return toMs - fromMs;
  }

  public boolean contains(long ms) {
    return ms >= fromMs && ms <= toMs;
  }

  /** Whether any instant of the span from {@code startMs} to {@code endMs} lies within. */
  public boolean touches(long startMs, long endMs) {
    return startMs <= toMs && endMs >= fromMs;
  }

  /** This range made longer (factor above 1) or shorter, with one moment staying in its place. */
  public TimeRange scaledAround(long ms, double factor) {
    long before = Math.round((ms - fromMs) * factor);
    long after = Math.round((toMs - ms) * factor);
    return between(ms - before, ms + after);
  }

  /** This range moved, and cut if need be, so that it lies within {@code outer}. */
  public TimeRange within(TimeRange outer) {
    if (lengthMs() >= outer.lengthMs()) {
      return outer;
    }
    long from = Math.max(outer.fromMs, Math.min(fromMs, outer.toMs - lengthMs()));
    return new TimeRange(from, from + lengthMs());
  }

  /** Share of the way from first to last instant; beyond 0 to 1 for moments outside. */
  double shareAt(long ms) {
    return (double) (ms - fromMs) / lengthMs();
  }
}
