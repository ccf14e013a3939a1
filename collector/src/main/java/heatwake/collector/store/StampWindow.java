package heatwake.collector.store;

/**
 * The stretch of time in which the stamps of a run's readings are believed.
 *
 * @param fromMs first moment, UTC milliseconds
 * @param untilMs the moment after the last
 */
record StampWindow(long fromMs, long untilMs) {
  /** All readings are taken as they are. */
  static final StampWindow ALL = new StampWindow(Long.MIN_VALUE, Long.MAX_VALUE);
}
