package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The temperature rise of the water, as far as it tells whether the heater heats. It is heard while
 * water is known to move. Where nothing tells whether it moves, it is heard while the entering
 * water keeps its temperature, as a pool does and a pipe at rest does not, and believed only if it
 * holds a level: standing water in two pipes differs honestly, but it drifts.
 */
final class WaterRise {
  /** A rise under half a kelvin is never taken for heating on its own (ours). */
  static final double LEAST_RISE_K = 0.5;

  /** A rise is believed from this many standard uncertainties of the difference on (GUM: k = 3). */
  private static final double BELIEVED_K = 3;

  /** Water is chilled from this many standard uncertainties of the difference on (GUM: k = 2). */
  private static final double CHILLED_K = 2;

  /** Coarse digits leave this open (ours, as {@link ChilledWater}). */
  private static final double COARSE_K = 0.2;

  /** Entering water that changes more than this in the time below stands (ours; a pool: 0.1 K). */
  private static final double CALM_K = 0.3;

  private static final double CALM_S = 600;

  private final double[] riseK;
  private final Track heats;
  private final double fullK;
  private final double restingK;
  private final double openK;

  private WaterRise(double[] riseK, Track heats, double fullK, double restingK, double openK) {
    this.riseK = riseK;
    this.heats = heats;
    this.fullK = fullK;
    this.restingK = restingK;
    this.openK = openK;
  }

  /** Water-out minus water-in less the resting difference; NaN where it says nothing. */
  double[] riseK() {
    return riseK;
  }

  /** Whether the heater heats. */
  Track heats() {
    return heats;
  }

  /** Rise usual while heating; NaN if it never heats. */
  double fullK() {
    return fullK;
  }

  /** What the pair showed at rest, which is taken off; K. */
  double restingK() {
    return restingK;
  }

  /**
   * Whether the water leaves colder than it enters from one instant up to another, beyond what the
   * pair of probes leaves open; as read, since what was taken for its rest may be such a time.
   */
  boolean chills(int from, int to) {
    return Stretch.mean(riseK, from, to) + restingK < -openK;
  }

  static Optional<WaterRise> of(Timeline timeline, Rig rig, Track waterMoves) {
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return Optional.empty();
    }
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    boolean waterIsKnown = waterMoves.speaks();
    IntPredicate heardAt = waterIsKnown ? waterMoves::yes : calm(in, timeline.stepMs());
    double[] rise = new double[in.length];
    for (int i = 0; i < rise.length; i++) {
      rise[i] = heardAt.test(i) ? out[i] - in[i] : Double.NaN;
    }
    double pairK = ProbeUncertainty.ofDifference(rig, Channel.WATER_IN, Channel.WATER_OUT);
    double believedK = Math.max(LEAST_RISE_K, BELIEVED_K * pairK);
    RiseLevels levels = RiseLevels.of(rise, believedK);
    for (int i = 0; i < rise.length; i++) {
      rise[i] -= levels.restingK();
    }
    Track heats =
        levels.heats()
            ? Track.above(rise, 0.5 * levels.fullK(), 0.35 * levels.fullK())
            : Track.above(rise, believedK, 0.8 * believedK);
    if (!waterIsKnown) {
      DriftingRise.forget(heats, rise, timeline);
    }
    if (levels.heats()) {
      RiseFeet.move(rise, heats, levels.fullK(), timeline.stepMs());
    }
    return Optional.of(
        new WaterRise(
            rise,
            heats,
            levels.heats() ? levels.fullK() : Double.NaN,
            levels.restingK(),
            Math.max(COARSE_K, CHILLED_K * pairK)));
  }

  /** Where the entering water keeps its temperature, by readings up to the ends of the run. */
  private static IntPredicate calm(double[] in, long stepMs) {
    int half = (int) Math.max(1, CALM_S * 500 / stepMs);
    int first = 0;
    while (first < in.length - 1 && Double.isNaN(in[first])) {
      first++;
    }
    int last = in.length - 1;
    while (last > first && Double.isNaN(in[last])) {
      last--;
    }
    int from = first;
    int to = last;
    return i -> Math.abs(in[Math.min(to, i + half)] - in[Math.max(from, i - half)]) < CALM_K;
  }
}
