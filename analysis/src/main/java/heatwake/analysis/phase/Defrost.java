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

  /** A defrost shows for longer than this (common practice: it takes 1 to 12 minutes). */
  private static final double LEAST_S = 30;

  private static final double MOST_S = 1200;

  /** Lift under this share of what it was goes with a defrost (ours). */
  private static final double LIFT_FALLEN = 0.85;

  /** Lift under this share is enough without a temperature rise to confirm it (ours). */
  private static final double LIFT_COLLAPSED = 0.4;

  /** Power off what it was by more than this share goes with a defrost: the fan stops (ours). */
  private static final double POWER_CHANGED = 0.1;

  /** Rise under this share of the usual, if lift and power both tell of it (ours). */
  private static final double RISE_GONE = 0.25;

  /** The water is cooled by this share of the usual rise (ours). */
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

  private Defrost(
      Timeline timeline,
      Track compressor,
      Optional<RefrigerantLift> lift,
      Optional<WaterRise> rise) {
    this.timeline = timeline;
    this.compressor = compressor;
    this.lift =
        lift.filter(RefrigerantLift::ofBothSides).map(RefrigerantLift::pascals).orElse(null);
    boolean heats = rise.isPresent() && !Double.isNaN(rise.get().fullK());
    this.rise = heats ? rise.get().riseK() : null;
    this.fullRiseK = heats ? rise.get().fullK() : Double.NaN;
    this.power = timeline.has(Channel.POWER) ? timeline.of(Channel.POWER) : null;
  }

  /** Marks defrosts among phases of a running compressor. */
  static void mark(
      Phase[] phase,
      Timeline timeline,
      Track compressor,
      Optional<RefrigerantLift> lift,
      Optional<WaterRise> rise) {
    new Defrost(timeline, compressor, lift, rise).mark(phase);
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
    Usual usual = new Usual(timeline.stepS());
    int free = from;
    for (int i = from + instants(NOT_BEFORE_S); i < to; i++) {
      if (!shows(i, usual)) {
        usual.learn(lift == null ? Double.NaN : lift[i], power == null ? Double.NaN : power[i]);
        continue;
      }
      int last = i;
      while (last < to && shows(last, usual)) {
        last++;
      }
      if (last - i >= instants(LEAST_S) && last - i <= instants(MOST_S)) {
        int start = begin(i, Math.max(free, i - instants(SHOWS_WITHIN_S)), usual);
        int stop = finish(i, last, usual);
        Arrays.fill(phase, start, Math.max(start, stop), Phase.DEFROST);
        free = stop;
      }
      i = last;
    }
  }

  /** What lift and power lately were, outside defrosts; NaN where not known. */
  private static final class Usual {
    private static final double MEMORY_S = 300;

    private final double memory;
    private double lift = Double.NaN;
    private double power = Double.NaN;

    Usual(double stepS) {
      this.memory = Math.min(1, stepS / MEMORY_S);
    }

    void learn(double liftNow, double powerNow) {
      lift = mix(lift, liftNow);
      power = mix(power, powerNow);
    }

    private double mix(double before, double now) {
      if (Double.isNaN(now)) {
        return before;
      }
      return Double.isNaN(before) ? now : before + memory * (now - before);
    }
  }

  private int instants(double seconds) {
    return (int) Math.max(1, Math.ceil(seconds * 1000 / timeline.stepMs()));
  }

  private boolean shows(int i, Usual usual) {
    double riseShare = rise == null ? Double.NaN : rise[i] / fullRiseK;
    double liftShare = lift == null ? Double.NaN : lift[i] / usual.lift;
    double powerShare = power == null ? Double.NaN : power[i] / usual.power;
    if (Double.isNaN(riseShare)) {
      return liftShare < LIFT_COLLAPSED;
    }
    boolean liftFell = liftShare < LIFT_FALLEN;
    boolean powerChanged = Math.abs(powerShare - 1) > POWER_CHANGED;
    boolean nobodyElse = Double.isNaN(liftShare) && Double.isNaN(powerShare);
    // A leaving probe that hangs on does not outweigh both: no compressor loses its lift unharmed.
    boolean bothTell = liftShare < LIFT_COLLAPSED && powerChanged;
    return bothTell
        || (riseShare < RISE_NEGATIVE && (liftFell || powerChanged || nobodyElse))
        || (riseShare < RISE_GONE && liftFell && (powerChanged || Double.isNaN(powerShare)));
  }

  /** The moment at which power or lift left its level, else the rise. */
  private int begin(int seen, int earliest, Usual usual) {
    int start = seen;
    if (rise != null) {
      start = lastWhere(earliest, seen, i -> rise[i] >= (1 - 2 * LEFT_LEVEL) * fullRiseK);
    }
    if (lift != null && lift[seen] < (1 - LEFT_LEVEL) * usual.lift) {
      start = lastWhere(earliest, seen, i -> lift[i] >= (1 - LEFT_LEVEL) * usual.lift);
    }
    if (power != null && Math.abs(power[seen] / usual.power - 1) > POWER_CHANGED) {
      int left =
          lastWhere(
              earliest, seen, i -> Math.abs(power[i] - usual.power) <= LEFT_LEVEL * usual.power);
      start = Math.min(start, left);
    }
    return start;
  }

  /** The moment at which the first of power and lift, or else the rise, began to come back. */
  private int finish(int seen, int back, Usual usual) {
    int end = back;
    if (power != null) {
      double middle = Stretch.mean(power, seen, (seen + back + 1) / 2);
      if (Math.abs(middle / usual.power - 1) > POWER_CHANGED) {
        double halfWay = (middle + usual.power) / 2;
        boolean below = middle < usual.power;
        end = lastWhere(seen, back, i -> below ? power[i] < halfWay : power[i] > halfWay);
      }
    }
    if (lift != null) {
      end = Math.min(end, leavesLowest(lift, usual.lift, seen, back));
    }
    return power == null && lift == null ? leavesLowest(rise, fullRiseK, seen, back) : end;
  }

  private static int leavesLowest(double[] signal, double level, int seen, int back) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = seen; i < back; i++) {
      if (signal[i] < lowest) {
        lowest = signal[i];
      }
    }
    double leaves = lowest + LEFT_LEVEL * (level - lowest);
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
