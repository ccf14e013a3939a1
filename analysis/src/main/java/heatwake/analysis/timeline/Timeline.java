package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The readings of a run on one even grid of instants: SI values, NaN where there is nothing to go
 * by.
 *
 * <p>Between two readings no further apart than {@value #GAP_INTERVALS} of the channel's usual
 * intervals a value is interpolated linearly (a state is held); a longer silence stays NaN. Where
 * readings come at least twice as fast as the grid, a cell holds their mean. A state whose probe
 * speaks only when it changes is held until it speaks again, to the end of the run if need be, and
 * so is a value with a dead band ({@link DeadBand}). The grid step is the shortest usual interval
 * of any measured channel, never under {@value #SHORTEST_STEP_MS} ms and never so short that the
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
  private final double[] nothing;
  private final Map<Class<?>, Object> found = new HashMap<>();

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
    this.nothing = unknown(size);
  }

  /** Values of which none is known. */
  public static double[] unknown(int size) {
    double[] unknown = new double[size];
    Arrays.fill(unknown, Double.NaN);
    return unknown;
  }

  /** Brings a recording onto a grid. Readings that cannot be true of their channel are left out. */
  public static Timeline of(Recording recording) {
    PossibleReadings possible = PossibleReadings.of(recording);
    long shortest =
        Math.max(SHORTEST_STEP_MS, possible.shortestIntervalMs().orElse(SHORTEST_STEP_MS));
    long span = Math.max(0, recording.endMs() - recording.startMs());
    long step = Math.max(shortest, span / (MOST_INSTANTS - 1) + 1);
    return on(possible, recording.startMs(), step, (int) (span / step) + 1);
  }

  /** Brings other readings of the same run onto the grid of this timeline. */
  public Timeline with(Recording readings) {
    return on(PossibleReadings.of(readings), startMs, stepMs, size);
  }

  private static Timeline on(PossibleReadings possible, long startMs, long stepMs, int size) {
    return new Timeline(
        startMs, stepMs, size, possible.onGrid(startMs, stepMs, size), possible.intervalMs());
  }

  /**
   * Usual time between the readings of a series: the median gap, bursts left aside, at least 1 ms;
   * one minute for a channel with a single reading.
   */
  public static long usualIntervalMs(Series series) {
    return Interval.usualMs(series);
  }

  /** The same timeline with one channel's values moved to later instants. */
  public Timeline delayed(Channel channel, int instants) {
    double[] moved = new double[size];
    Arrays.fill(moved, 0, Math.min(size, instants), Double.NaN);
    System.arraycopy(of(channel), 0, moved, Math.min(size, instants), Math.max(0, size - instants));
    Map<Channel, double[]> changed = new EnumMap<>(values);
    changed.put(channel, moved);
    return new Timeline(startMs, stepMs, size, changed, intervalMs);
  }

  /**
   * What is found by looking through all of it, and looked for once however many ask. Whoever is
   * given it must not change it. A timeline is one thread's.
   *
   * @param finder who looks for it; the same one must always look for the same
   * @param find looks for it
   */
  @SuppressWarnings("unchecked") // The finder put in what it takes out.
  public <T> T once(Class<?> finder, Function<Timeline, T> find) {
    Object known = found.get(finder);
    if (known == null) {
      known = find.apply(this);
      found.put(finder, known);
    }
    return (T) known;
  }

  /** First instant, UTC milliseconds. */
  public long startMs() {
    return startMs;
  }

  /** Time between instants. */
  public long stepMs() {
    return stepMs;
  }

  /** Time between instants, s. */
  public double stepS() {
    return stepMs / 1e3;
  }

  /** So many instants as last for some seconds, rounded up. */
  public int instants(double seconds) {
    return (int) Math.ceil(seconds / stepS());
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

  /** The first instant at or after a time; {@link #size()} if there is none. */
  public int firstAtOrAfter(long timeMs) {
    return (int) Math.max(0, Math.min(size, -Math.floorDiv(startMs - timeMs, stepMs)));
  }

  public boolean has(Channel channel) {
    return values.containsKey(channel);
  }

  /** The first of two channels that was recorded; the second if neither was. */
  public Channel preferred(Channel first, Channel otherwise) {
    return has(first) ? first : otherwise;
  }

  /**
   * SI values of a channel at every instant; all NaN if the channel was not recorded. Shared, not
   * to be written to.
   */
  public double[] of(Channel channel) {
    return values.getOrDefault(channel, nothing);
  }

  /** Usual time between readings of a recorded channel. */
  public long intervalMs(Channel channel) {
    return intervalMs.get(channel);
  }

  /** Usual time between readings of a recorded channel in instants, at least one. */
  public int intervalInstants(Channel channel) {
    return (int) Math.max(1, Math.min(size, Math.round((double) intervalMs(channel) / stepMs)));
  }

  /**
   * Mean of a channel from one time to another, both included; empty if nothing was read there.
   *
   * @param fromMs UTC milliseconds
   * @param toMs UTC milliseconds
   */
  public OptionalDouble meanBetween(Channel channel, long fromMs, long toMs) {
    double[] wanted = of(channel);
    double sum = 0;
    int count = 0;
    for (int i = firstAtOrAfter(fromMs); i < size && timeMs(i) <= toMs; i++) {
      if (!Double.isNaN(wanted[i])) {
        sum += wanted[i];
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
  }
}
