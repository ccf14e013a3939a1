package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;

/**
 * What tells how hard the compressor works, as means over some minutes. A probe that moves while
 * these keep their level has moved by itself. NaN where a channel says nothing.
 */
record BlockDuty(double powerW, double highPa, double lowPa) {
  static BlockDuty over(Timeline timeline, Stretch stretch) {
    return new BlockDuty(
        stretch.mean(timeline.of(Channel.POWER)),
        stretch.mean(timeline.of(Channel.PRESSURE_DISCHARGE)),
        stretch.mean(timeline.of(Channel.PRESSURE_SUCTION)));
  }

  /** Whether each, as far as it is known in both, keeps its level within a share. */
  boolean keeps(BlockDuty other, double share) {
    return keeps(powerW, other.powerW, share)
        && keeps(highPa, other.highPa, share)
        && keeps(lowPa, other.lowPa, share);
  }

  /** Whether the high side and one more of low side and power are known in both. */
  boolean isKnownBeside(BlockDuty other) {
    return !Double.isNaN(highPa + other.highPa)
        && (!Double.isNaN(lowPa + other.lowPa) || !Double.isNaN(powerW + other.powerW));
  }

  /** Whether a value keeps its level within a share, or is not known. */
  static boolean keeps(double before, double now, double share) {
    double change = Math.abs(now - before);
    return Double.isNaN(change) || change <= share * Math.abs(before);
  }
}
