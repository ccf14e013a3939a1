package heatwake.analysis.phase;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;

/**
 * Two gauges that part a little, but with the draw: a compressor that turns fills the high side and
 * empties the low one, however slow or worn it is. A fan brings a side nearer to its air, no more,
 * and what the gauges keep wrong falls out of the difference between drawing and resting.
 */
final class FaintLift {
  /** They part by more than this share of the standing pressure (absolute); ours. */
  private static final double PARTS = 0.05;

  /** Each side moves its way by more than this share: a gauge strays by as much (ours). */
  private static final double MOVES = 0.01;

  private FaintLift() {}

  /** Whether they do. */
  static boolean goesWithTheDraw(Timeline timeline) {
    if (!timeline.has(Channel.PRESSURE_DISCHARGE) || !timeline.has(Channel.PRESSURE_SUCTION)) {
      return false;
    }
    DrawContrast high = DrawContrast.of(timeline, timeline.of(Channel.PRESSURE_DISCHARGE));
    DrawContrast low = DrawContrast.of(timeline, timeline.of(Channel.PRESSURE_SUCTION));
    double standingPa = low.resting() + AbsolutePressure.STANDARD_ATMOSPHERE.pa();
    double rises = high.difference() / standingPa;
    double falls = -low.difference() / standingPa;
    return rises > MOVES && falls > MOVES && rises + falls > PARTS;
  }
}
