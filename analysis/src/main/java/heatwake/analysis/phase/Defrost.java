package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;

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
  static final double POWER_CHANGED = 0.1;

  /** Rise under this share of the usual, if lift and power both tell of it (ours). */
  private static final double RISE_GONE = 0.25;

  /** The water is cooled by this share of the usual rise (ours). */
  private static final double RISE_NEGATIVE = -0.15;

  /** Longest time from the switch-over until slow probes show it (ours). */
  private static final double SHOWS_WITHIN_S = 150;

  private final Timeline timeline;
  private final Track compressor;
  private final double[] lift;
  private final double[] rise;
  private final double fullRiseK;
  private final double[] power;
  private final DefrostEdges edges;

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
    this.edges = new DefrostEdges(this.lift, this.rise, fullRiseK, power);
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
    UsualDuty usual = new UsualDuty(timeline.stepS());
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
        int start = edges.begin(i, Math.max(free, i - instants(SHOWS_WITHIN_S)), usual);
        int stop = edges.finish(i, last, usual);
        Arrays.fill(phase, start, Math.max(start, stop), Phase.DEFROST);
        free = stop;
      }
      i = last;
    }
  }

  private int instants(double seconds) {
    return (int) Math.max(1, Math.ceil(seconds * 1000 / timeline.stepMs()));
  }

  private boolean shows(int i, UsualDuty usual) {
    double riseShare = rise == null ? Double.NaN : rise[i] / fullRiseK;
    double liftShare = lift == null ? Double.NaN : lift[i] / usual.lift();
    double powerShare = power == null ? Double.NaN : power[i] / usual.power();
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
}
