package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;

/**
 * A draw so small that it may be the compressor's crankcase heater. That follows the air, or is
 * always on, and says nothing of a call for heat; a fan of this size is had by small heaters too.
 */
final class SmallDraw {
  /** A crankcase heater takes 40 to 80 W (common practice), the control some 10 W beside, W. */
  static final double MOST_W = 90;

  /** It lies between a phase and neutral, of no more than this (common practice), V. */
  private static final double PHASE_V = 230;

  /** What a clamp reads of heater, control and mains filter together; ours, for small loads. */
  private static final double POWER_FACTOR = 0.65;

  private SmallDraw() {}

  /** Whether the heater drew no more than that at the middle of a stretch. */
  static boolean isIn(Evidence evidence, Channel channel, Stretch stretch) {
    double most =
        channel == Channel.POWER
            ? MOST_W
            : MOST_W
                / POWER_FACTOR
                / Math.min(PHASE_V, evidence.recording().rig().heater().voltageV().orElse(PHASE_V));
    double[] draw = evidence.timeline().of(channel);
    return stretch.middle(draw) <= most;
  }
}
