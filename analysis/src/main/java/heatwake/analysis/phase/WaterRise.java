package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * The temperature rise of the water, as far as it tells whether the heater heats. It is only heard
 * while water is known to move: standing water in two pipes differs honestly.
 */
final class WaterRise {
  /** A rise under half a kelvin is never taken for heating on its own (ours). */
  private static final double LEAST_RISE_K = 0.5;

  /**
   * A rise is believed from this many standard uncertainties of the difference upwards (GUM: k =
   * 3).
   */
  private static final double BELIEVED_K = 3;

  /** Standard uncertainty of a clipped temperature probe where the rig states none (ours). */
  private static final double UNSTATED_U_K = 0.2;

  private final double[] riseK;
  private final Track heats;
  private final double fullK;

  private WaterRise(double[] riseK, Track heats, double fullK) {
    this.riseK = riseK;
    this.heats = heats;
    this.fullK = fullK;
  }

  /** Water-out minus water-in less the resting difference; NaN where water may stand. */
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

  static Optional<WaterRise> of(Timeline timeline, Rig rig, Track waterMoves) {
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return Optional.empty();
    }
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    double[] rise = new double[in.length];
    for (int i = 0; i < rise.length; i++) {
      rise[i] = waterMoves.yes(i) ? out[i] - in[i] : Double.NaN;
    }
    double uncertaintyK =
        Math.hypot(uncertaintyK(rig, Channel.WATER_IN), uncertaintyK(rig, Channel.WATER_OUT));
    double believedK = Math.max(LEAST_RISE_K, BELIEVED_K * uncertaintyK);
    RiseLevels levels = RiseLevels.of(rise, believedK);
    for (int i = 0; i < rise.length; i++) {
      rise[i] -= levels.restingK();
    }
    Track heats =
        levels.heats()
            ? Track.above(rise, 0.5 * levels.fullK(), 0.35 * levels.fullK())
            : Track.above(rise, believedK, 0.8 * believedK);
    return Optional.of(new WaterRise(rise, heats, levels.heats() ? levels.fullK() : Double.NaN));
  }

  private static double uncertaintyK(Rig rig, Channel channel) {
    Probe probe = rig.probes().get(channel);
    return probe != null && probe.uncertainty() instanceof ReadingUncertainty.Absolute absolute
        ? absolute.si()
        : UNSTATED_U_K;
  }
}
