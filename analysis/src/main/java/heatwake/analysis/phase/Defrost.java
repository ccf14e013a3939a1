package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Defrosts: the compressor goes on running while heat stops reaching the water or is taken from it,
 * and the pressures fall together. The moment is taken from the quickest signal that shows it.
 */
final class Defrost {
  /** No defrost so soon after a compressor start (common practice: it takes ice first). */
  private static final double NOT_BEFORE_S = 240;

  /** A defrost lasts longer than this (common practice: 2 to 12 minutes). */
  private static final double LEAST_S = 45;

  private static final double MOST_S = 1200;

  /** Lift under this share of what it was (ours). */
  private static final double LIFT_FALLEN = 0.6;

  /** Lift under this share is enough without a temperature rise to confirm it (ours). */
  private static final double LIFT_COLLAPSED = 0.4;

  /** Rise under this share of the usual (ours). */
  private static final double RISE_GONE = 0.25;

  /** Without pressures the water must be seen cooled by this share of the usual rise (ours). */
  private static final double RISE_NEGATIVE = -0.15;

  /** Signals leave their level by more than this share (ours, above noise). */
  private static final double LEFT_LEVEL = 0.08;

  /** Longest time from the switch-over until slow probes show it (ours). */
  private static final double SHOWS_WITHIN_S = 150;

  private final Timeline timeline;
  private final Track compressor;
  private final double[] lift;
  private final double[] rise;
  private final double fullRiseK;
  private final double[] power;

  private Defrost(Timeline timeline, Track compressor, Optional<WaterRise> rise) {
    this.timeline = timeline;
    this.compressor = compressor;
    boolean bothSides =
        timeline.has(Channel.PRESSURE_DISCHARGE) && timeline.has(Channel.PRESSURE_SUCTION);
    this.lift = bothSides ? RefrigerantLift.lift(timeline) : null;
    boolean heats = rise.isPresent() && !Double.isNaN(rise.get().fullK());
    this.rise = heats ? rise.get().riseK() : null;
    this.fullRiseK = heats ? rise.get().fullK() : Double.NaN;
    this.power = timeline.has(Channel.POWER) ? timeline.of(Channel.POWER) : null;
  }

  /** Marks defrosts among phases of a running compressor. */
  static void mark(Phase[] phase, Timeline timeline, Track compressor, Optional<WaterRise> rise) {
    new Defrost(timeline, compressor, rise).mark(phase);
  }

  private void mark(Phase[] phase) {
    if (lift == null && rise == null) {
      return;
    }
    for (int i = 0; i < phase.length; ) {
      int end = compressor.endOfStretch(i);
      if (compressor.yes(i)) {
        markWithin(phase, i, end);
      }
      i = end;
    }
  }

  private void markWithin(Phase[] phase, int from, int to) {
    double memory = Math.min(1, timeline.stepMs() / 300e3);
    double recentLift = Double.NaN;
    int free = from;
    for (int i = from + instants(NOT_BEFORE_S); i < to; i++) {
      if (!shows(i, recentLift)) {
        if (lift != null && !Double.isNaN(lift[i])) {
          recentLift =
              Double.isNaN(recentLift) ? lift[i] : recentLift + memory * (lift[i] - recentLift);
        }
        continue;
      }
      int last = i;
      while (last < to && shows(last, recentLift)) {
        last++;
      }
      if (last - i >= instants(LEAST_S) && last - i <= instants(MOST_S)) {
        int start = begin(i, Math.max(free, i - instants(SHOWS_WITHIN_S)), recentLift);
        int stop = finish(i, last, recentLift);
        Arrays.fill(phase, start, stop, Phase.DEFROST);
        free = stop;
      }
      i = last;
    }
  }

  private int instants(double seconds) {
    return (int) Math.max(1, Math.ceil(seconds * 1000 / timeline.stepMs()));
  }

  private boolean shows(int i, double recentLift) {
    boolean hasRise = rise != null && !Double.isNaN(rise[i]);
    boolean hasLift = lift != null && !Double.isNaN(lift[i]) && !Double.isNaN(recentLift);
    if (hasLift && hasRise) {
      return lift[i] < LIFT_FALLEN * recentLift && rise[i] < RISE_GONE * fullRiseK;
    }
    return hasLift
        ? lift[i] < LIFT_COLLAPSED * recentLift
        : hasRise && rise[i] < RISE_NEGATIVE * fullRiseK;
  }

  /** The moment at which lift or power left its level, else the rise. */
  private int begin(int seen, int earliest, double recentLift) {
    int start = seen;
    if (rise != null) {
      start = lastWhere(earliest, seen, i -> rise[i] >= (1 - 2 * LEFT_LEVEL) * fullRiseK);
    }
    if (lift != null) {
      start = lastWhere(earliest, seen, i -> lift[i] >= (1 - LEFT_LEVEL) * recentLift);
    }
    if (power != null) {
      double level = Stretch.mean(power, earliest - instants(60), earliest);
      int left = lastWhere(earliest, seen, i -> Math.abs(power[i] - level) <= LEFT_LEVEL * level);
      if (left < seen) {
        start = Math.min(start, left);
      }
    }
    return start;
  }

  /** The moment at which lift, or else the rise, began to come back. */
  private int finish(int seen, int back, double recentLift) {
    double[] signal = lift != null ? lift : rise;
    double usual = lift != null ? recentLift : fullRiseK;
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = seen; i < back; i++) {
      if (signal[i] < lowest) {
        lowest = signal[i];
      }
    }
    double leaves = lowest + LEFT_LEVEL * (usual - lowest);
    return lastWhere(seen, back, i -> signal[i] <= leaves);
  }

  /** One after the last instant between two for which something holds; the later one if none. */
  private static int lastWhere(int from, int to, IntPredicate holds) {
    for (int i = to - 1; i >= from; i--) {
      if (holds.test(i)) {
        return i + 1;
      }
    }
    return to;
  }
}
