package heatwake.dashboard.chart;

/** Which part of a run is looked at, also while the run grows. */
public sealed interface View {
  /** The whole run, however long it gets. */
  record Whole() implements View {}

  /** The latest stretch, following the run as it grows. */
  record Latest(long lengthMs) implements View {}

  /** A fixed stretch. */
  record Fixed(TimeRange range) implements View {}

  /** What is seen of a run that spans {@code whole} by now. */
  default TimeRange of(TimeRange whole) {
    if (this instanceof Latest latest) {
      return new TimeRange(whole.toMs() - latest.lengthMs(), whole.toMs());
    }
    return this instanceof Fixed fixed ? fixed.range() : whole;
  }

  /** A fixed view of a range, kept within the run; the whole run if the range holds it all. */
  static View fixed(TimeRange range, TimeRange whole) {
    TimeRange within = range.within(whole);
    return within.equals(whole) ? new Whole() : new Fixed(within);
  }

  /**
   * A view in which a span stands in the middle third, so that one sees what led to it and what
   * came of it.
   */
  static View around(long startMs, long endMs, TimeRange whole) {
    long marginMs = Math.max(endMs - startMs, 10 * 60_000L);
    return fixed(TimeRange.between(startMs - marginMs, endMs + marginMs), whole);
  }
}
