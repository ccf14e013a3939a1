package heatwake.collector.store;

/**
 * The one integer under which a reading lies in the database, made of segment, time and channel:
 *
 * <pre>key = segment &lt;&lt; 42 | (milliseconds within the segment) &lt;&lt; 6 | channel number
 * </pre>
 *
 * <p>A segment is one run's readings within one window of 2^36 ms (2.2 years) of the epoch's time
 * line. Nearly every run has one. One integer key in order of time makes a reading about 20 bytes,
 * appended at the end of the table, and makes storing it twice impossible.
 */
final class ReadingKey {
  private static final int CHANNEL_BITS = 6;
  private static final int TIME_BITS = 36;
  private static final long CHANNEL_MASK = (1L << CHANNEL_BITS) - 1;
  private static final long TIME_MASK = (1L << TIME_BITS) - 1;

  /** Greatest number a segment can have. */
  static final long GREATEST_SEGMENT = (1L << (63 - TIME_BITS - CHANNEL_BITS)) - 1;

  private ReadingKey() {}

  /** The window of the time line that a moment lies in. */
  static long window(long timeMs) {
    return timeMs >> TIME_BITS;
  }

  static long of(long segment, long timeMs, int channelNumber) {
    return first(segment) | ((timeMs & TIME_MASK) << CHANNEL_BITS) | channelNumber;
  }

  /** Least key of a segment. */
  static long first(long segment) {
    return segment << (TIME_BITS + CHANNEL_BITS);
  }

  /** Greatest key of a segment. */
  static long last(long segment) {
    return first(segment) | ((1L << (TIME_BITS + CHANNEL_BITS)) - 1);
  }

  static long timeMs(long key, long window) {
    return (window << TIME_BITS) | ((key >> CHANNEL_BITS) & TIME_MASK);
  }

  static int channelNumber(long key) {
    return (int) (key & CHANNEL_MASK);
  }
}
