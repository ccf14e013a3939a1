package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;

/**
 * A draw that may be the pool pump's on the heater's meter: it came on with the water, and moved
 * neither pressure. A compressor, however worn, parts the two a little; and most heaters wait for
 * some time once the water is there.
 */
final class PumpsDraw {
  /** Draw and water come on within so long of one another, s; ours. */
  private static final double TOGETHER_S = 60;

  /** Pressures within this share (absolute) are not moved or parted; ours, twice a gauge's 1 %. */
  private static final double UNMOVED = 0.02;

  private PumpsDraw() {}

  /** Whether a start may be the pump's. */
  static boolean mayBe(Evidence evidence, StartPressures start) {
    if (start.suctionPa().isEmpty()) {
      return false;
    }
    return isAlike(start.afterPa(), start.beforePa())
        && isAlike(start.afterPa(), start.suctionPa().getAsDouble())
        && cameWithTheWater(evidence, start.cycle().startMs());
  }

  private static boolean isAlike(double onePa, double otherPa) {
    return Math.abs(onePa - otherPa)
        <= UNMOVED * (otherPa + AbsolutePressure.STANDARD_ATMOSPHERE.pa());
  }

  private static boolean cameWithTheWater(Evidence evidence, long startMs) {
    Timeline timeline = evidence.timeline();
    Track moves = WaterMovement.of(timeline);
    int at = timeline.firstAtOrAfter(startMs);
    int apart = timeline.instants(TOGETHER_S);
    int before = at - apart;
    int after = at + apart;
    return before >= 0 && after < timeline.size() && moves.no(before) && moves.yes(after);
  }
}
