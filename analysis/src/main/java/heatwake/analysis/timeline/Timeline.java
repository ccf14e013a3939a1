package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/**
 * The readings of a run on one even grid of instants: SI values, NaN where there is nothing to go
 * by.
 *
 * <p>Between two readings no further apart than {@value #GAP_INTERVALS} of the channel's usual
 * intervals a value is interpolated linearly (a state is held); a longer silence stays NaN. Where
 * readings come faster than the grid, a cell holds their mean. The grid step is the shortest usual
 * interval of any channel, never under {@value #SHORTEST_STEP_MS} ms and never so short that the
 * grid exceeds {@value #MOST_INSTANTS} instants, so every later step is linear in hours and
 * channels.
 */
public final class Timeline {
  /** A silence longer than this many usual intervals is a gap. */
  public static final int GAP_INTERVALS = 3;

  static final long SHORTEST_STEP_MS = 1000;
  static final int MOST_INSTANTS = 400_000;

  private final long startMs;
  private final long stepMs;
  private final int size;
  private final Map<Channel, double[]> values;
  private final Map<Channel, Long> intervalMs;

  private Timeline(
      long startMs,
      long stepMs,
      int size,
      Map<Channel, double[]> values,
      Map<Channel, Long> intervalMs) {
    this.startMs = startMs;
    this.stepMs = stepMs;
    this.size = size;
    this.values = values;
    this.intervalMs = intervalMs;
  }

  /** Brings a recording onto a grid. Readings that cannot be true of their channel are left out. */
  public static Timeline of(Recording recording) {
    Map<Channel, Series> possible = new EnumMap<>(Channel.class);
    Map<Channel, Long> intervals = new EnumMap<>(Channel.class);
    recording
        .series()
        .forEach(
            (channel, series) -> {
              Series kept = withoutImpossible(series);
              if (!kept.isEmpty()) {
                possible.put(channel, kept);
                intervals.put(channel, usualIntervalMs(kept));
              }
            });
    long span = Math.max(0, recording.endMs() - recording.startMs());
    long step = SHORTEST_STEP_MS;
    if (!intervals.isEmpty()) {
      step =
          Math.max(step, intervals.values().stream().mapToLong(Long::longValue).min().orElse(step));
    }
    step = Math.max(step, span / (MOST_INSTANTS - 1) + 1);
    int size = (int) (span / step) + 1;
    Map<Channel, double[]> values = new EnumMap<>(Channel.class);
    for (Series series : possible.values()) {
      values.put(
          series.channel(),
          onGrid(series, recording.startMs(), step, size, intervals.get(series.channel())));
    }
    return new Timeline(recording.startMs(), step, size, values, intervals);
  }

  private static Series withoutImpossible(Series series) {
    Channel channel = series.channel();
    var unit = channel.storedUnit();
    int i = 0;
    while (i < series.size() && channel.isPossible(unit.fromSi(series.value(i)))) {
      i++;
    }
    if (i == series.size()) {
      return series;
    }
    Series.Builder kept = Series.of(channel);
    for (int j = 0; j < series.size(); j++) {
      if (channel.isPossible(unit.fromSi(series.value(j)))) {
        kept.add(series.timeMs(j), series.value(j));
      }
    }
    return kept.build();
  }

  /**
   * Median time between readings, at least 1 ms; one minute for a channel with a single reading.
   */
  public static long usualIntervalMs(Series series) {
    int gaps = series.size() - 1;
    if (gaps < 1) {
      return 60_000;
    }
    int stride = Math.max(1, gaps / 2000);
    long[] sample = new long[(gaps + stride - 1) / stride];
    for (int i = 0, k = 0; i < gaps; i += stride, k++) {
      sample[k] = series.timeMs(i + 1) - series.timeMs(i);
    }
    Arrays.sort(sample);
    return Math.max(1, sample[sample.length / 2]);
  }

  private static double[] onGrid(
      Series series, long startMs, long stepMs, int size, long intervalMs) {
    double[] grid = new double[size];
    Arrays.fill(grid, Double.NaN);
    long longestBridgeMs = Math.max(GAP_INTERVALS * intervalMs, stepMs);
    boolean state = series.channel().quantity() == Quantity.STATE;
    if (intervalMs * 2 <= stepMs && !state) {
      averageIntoCells(series, startMs, stepMs, grid);
    }
    for (int r = 0; r < series.size(); r++) {
      long time = series.timeMs(r);
      boolean last = r + 1 == series.size();
      long next = last ? time : series.timeMs(r + 1);
      boolean bridged = next - time <= longestBridgeMs;
      long until = bridged ? next : time + stepMs / 2;
      int first = (int) Math.max(0, -Math.floorDiv(startMs - time, stepMs));
      if (!bridged || last) {
        // A lone reading still speaks for the instant nearest to it.
        int nearest = (int) Math.floorDiv(time - startMs + stepMs / 2, stepMs);
        if (nearest >= 0 && nearest < size && Double.isNaN(grid[nearest])) {
          grid[nearest] = series.value(r);
        }
      }
      for (int i = first; i < size && startMs + i * stepMs <= until; i++) {
        if (Double.isNaN(grid[i]) || time == startMs + i * stepMs) {
          double share =
              state || next == time ? 0 : (double) (startMs + i * stepMs - time) / (next - time);
          grid[i] =
              share == 0 || !bridged
                  ? series.value(r)
                  : series.value(r) + share * (series.value(r + 1) - series.value(r));
        }
      }
    }
    return grid;
  }

  private static void averageIntoCells(Series series, long startMs, long stepMs, double[] grid) {
    int r = 0;
    while (r < series.size()) {
      long cell = Math.floorDiv(series.timeMs(r) - startMs + stepMs / 2, stepMs);
      double sum = 0;
      int count = 0;
      while (r < series.size()
          && Math.floorDiv(series.timeMs(r) - startMs + stepMs / 2, stepMs) == cell) {
        sum += series.value(r);
        count++;
        r++;
      }
      if (cell >= 0 && cell < grid.length) {
        grid[(int) cell] = sum / count;
      }
    }
  }

  /** First instant, UTC milliseconds. */
  public long startMs() {
    return startMs;
  }

  /** Time between instants. */
  public long stepMs() {
    return stepMs;
  }

  /** Number of instants. */
  public int size() {
    return size;
  }

  /** Time of instant {@code i}, UTC milliseconds. */
  public long timeMs(int i) {
    return startMs + i * stepMs;
  }

  /** The last instant at or before a time, kept within the grid. */
  public int indexAt(long timeMs) {
    return (int) Math.max(0, Math.min(size - 1L, Math.floorDiv(timeMs - startMs, stepMs)));
  }

  public boolean has(Channel channel) {
    return values.containsKey(channel);
  }

  /**
   * SI values of a channel at every instant; all NaN if the channel was not recorded. Shared, not
   * to be written to.
   */
  public double[] of(Channel channel) {
    double[] found = values.get(channel);
    if (found == null) {
      double[] nothing = new double[size];
      Arrays.fill(nothing, Double.NaN);
      return nothing;
    }
    return found;
  }

  /** Usual time between readings of a recorded channel. */
  public long intervalMs(Channel channel) {
    return intervalMs.get(channel);
  }
}
