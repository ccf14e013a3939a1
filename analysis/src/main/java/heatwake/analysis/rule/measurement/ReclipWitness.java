package heatwake.analysis.rule.measurement;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What else would have moved, had it been the heater or its water and not the clip alone.
 *
 * @param limitK what the pair leaves open, K
 * @param zeroK the pair's zero, K
 */
record ReclipWitness(Timeline timeline, double limitK, double zeroK) {
  /** Draw, pressures and flows keep their level within this share; ours. */
  private static final double KEEPS = 0.12;

  private static final List<Channel> DRAW_AND_HIGH_SIDE =
      List.of(Channel.POWER, Channel.CURRENT, Channel.PRESSURE_DISCHARGE);

  private static final List<Channel> WITNESSES =
      List.of(
          Channel.POWER,
          Channel.CURRENT,
          Channel.PRESSURE_DISCHARGE,
          Channel.PRESSURE_SUCTION,
          Channel.FLOW_HEATER,
          Channel.FLOW_TOTAL);

  static ReclipWitness of(Evidence evidence, double limitK) {
    return new ReclipWitness(
        evidence.timeline(),
        limitK,
        evidence.zero().map(zero -> zero.offsetK().value()).orElse(0.0));
  }

  /** Whether anything is read that a defrost or a stop would move. */
  static boolean canBeHeard(Timeline timeline) {
    return DRAW_AND_HIGH_SIDE.stream().anyMatch(timeline::has);
  }

  /**
   * Whether draw, pressures and flows keep their level, and at least the draw or high side is read.
   *
   * @param core while the clip reads something else
   * @param watched that, and some time before and after it
   */
  boolean nothingElseMoves(Stretch core, Stretch watched) {
    Stretch before = new Stretch(watched.from(), core.from());
    return WITNESSES.stream()
            .map(timeline::of)
            .allMatch(
                values -> {
                  double within = KEEPS * Math.abs(watched.mean(values));
                  return keeps(values, watched, within)
                      && !(Math.abs(core.mean(values) - before.mean(values)) > within);
                })
        && DRAW_AND_HIGH_SIDE.stream().anyMatch(channel -> isRead(channel, watched));
  }

  /** Whether neither a defrost nor more water can make the outlet read so. */
  boolean isNoWater(Stretch core, Stretch watched, double movesK) {
    if (movesK > 0) {
      return isRead(Channel.FLOW_HEATER, watched);
    }
    double riseK =
        core.mean(timeline.of(Channel.WATER_OUT)) - core.mean(timeline.of(Channel.WATER_IN));
    double airK =
        watched.mean(timeline.of(timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT)));
    boolean isNoDefrost =
        isRead(Channel.PRESSURE_DISCHARGE, watched)
            || isRead(Channel.PRESSURE_SUCTION, watched)
            || airK > IcingAir.NO_COIL_ABOVE_K;
    return isNoDefrost && (isRead(Channel.FLOW_HEATER, watched) || riseK - zeroK < -limitK);
  }

  private boolean isRead(Channel channel, Stretch stretch) {
    return !Double.isNaN(stretch.mean(timeline.of(channel)));
  }

  /** Whether all known values of a stretch lie about their mean; true where nothing is known. */
  static boolean keeps(double[] values, Stretch stretch, double within) {
    double mean = stretch.mean(values);
    return IntStream.range(stretch.from(), stretch.to())
        .mapToDouble(i -> Math.abs(values[i] - mean))
        .noneMatch(off -> off > within);
  }
}
