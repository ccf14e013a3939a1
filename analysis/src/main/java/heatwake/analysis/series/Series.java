package heatwake.analysis.series;

import heatwake.analysis.quantity.Channel;
import java.util.Arrays;
import java.util.BitSet;

/** The readings of one channel in order of time: UTC milliseconds and SI values. Immutable. */
public final class Series {
  private final Channel channel;
  private final long[] timesMs;
  private final double[] values;

  private Series(Channel channel, long[] timesMs, double[] values) {
    this.channel = channel;
    this.timesMs = timesMs;
    this.values = values;
  }

  public Channel channel() {
    return channel;
  }

  /** Number of readings. */
  public int size() {
    return timesMs.length;
  }

  public boolean isEmpty() {
    return timesMs.length == 0;
  }

  /** Time of reading {@code i}, UTC milliseconds. */
  public long timeMs(int i) {
    return timesMs[i];
  }

  /** Value of reading {@code i}, SI. */
  public double value(int i) {
    return values[i];
  }

  /** Index of the first reading at or after a time; {@link #size()} if there is none. */
  public int firstAtOrAfter(long timeMs) {
    int found = Arrays.binarySearch(timesMs, timeMs);
    return found >= 0 ? found : -found - 1;
  }

  /** Starts a series with the readings of this one before a time. */
  public Builder until(long timeMs) {
    Builder builder = new Builder(channel);
    builder.size = firstAtOrAfter(timeMs);
    builder.timesMs = Arrays.copyOf(timesMs, builder.size + Builder.ROOM);
    builder.values = Arrays.copyOf(values, builder.size + Builder.ROOM);
    return builder;
  }

  /** The series less some of its readings, by their number; itself where it loses none. */
  public Series without(BitSet left) {
    if (left.isEmpty()) {
      return this;
    }
    Builder kept = of(channel);
    for (int r = left.nextClearBit(0); r < size(); r = left.nextClearBit(r + 1)) {
      kept.add(timeMs(r), value(r));
    }
    return kept.build();
  }

  /** The smallest change from one reading to the next, SI; infinite if it never changed. */
  public double smallestStep() {
    double smallest = Double.POSITIVE_INFINITY;
    for (int r = 1; r < size(); r++) {
      double step = Math.abs(value(r) - value(r - 1));
      smallest = step > 0 ? Math.min(smallest, step) : smallest;
    }
    return smallest;
  }

  /** Starts a series of one channel. */
  public static Builder of(Channel channel) {
    return new Builder(channel);
  }

  /** Takes readings in order of time. */
  public static final class Builder {
    private static final int ROOM = 256;

    private final Channel channel;
    private long[] timesMs = new long[ROOM];
    private double[] values = new double[ROOM];
    private int size;

    private Builder(Channel channel) {
      this.channel = channel;
    }

    /**
     * Adds one reading.
     *
     * @throws IllegalArgumentException if it is not later than the one before
     */
    public Builder add(long timeMs, double si) {
      if (size > 0 && timeMs <= timesMs[size - 1]) {
        throw new IllegalArgumentException(
            "readings of " + channel + " are not in order of time at " + timeMs);
      }
      if (size == timesMs.length) {
        timesMs = Arrays.copyOf(timesMs, size * 2);
        values = Arrays.copyOf(values, size * 2);
      }
      timesMs[size] = timeMs;
      values[size] = si;
      size++;
      return this;
    }

    public Series build() {
      return new Series(channel, Arrays.copyOf(timesMs, size), Arrays.copyOf(values, size));
    }
  }
}
