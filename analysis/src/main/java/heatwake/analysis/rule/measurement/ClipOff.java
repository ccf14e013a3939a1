package heatwake.analysis.rule.measurement;

/** A time in which a clip is off its pipe. */
interface ClipOff {
  /** From when it cannot be believed, UTC milliseconds. */
  long startMs();

  /** Until when, UTC milliseconds. */
  long endMs();

  /** Whether any of it lies in a time, UTC milliseconds. */
  default boolean overlaps(long fromMs, long toMs) {
    return startMs() < toMs && endMs() > fromMs;
  }
}
