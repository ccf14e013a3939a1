package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;

/**
 * How the pressures go during a draw, as they are read: a compressor parts them at once, while what
 * they strive for is smoothed into the time before its start.
 */
final class PartingPressures {
  /** A compressor, however slow, has moved the pressures by then (common practice: seconds). */
  private static final double PARTS_WITHIN_S = 20;

  /** By more than this share of the full lift (ours: the weather moves them less in a minute). */
  private static final double UNMOVED = 0.1;

  private final double[] pascals;
  private final double full;
  private final int stays;

  private PartingPressures(double[] pascals, double full, int stays) {
    this.pascals = pascals;
    this.full = full;
    this.stays = stays;
  }

  static PartingPressures of(RefrigerantLift lift, Timeline timeline) {
    return new PartingPressures(lift.pascals(), lift.full(), timeline.instants(PARTS_WITHIN_S));
  }

  /**
   * Whether they are seen to part during a draw, by more than half of the run's full lift: a motor
   * that does not turn lifts nothing, however short its draw.
   *
   * @param from first instant of the draw
   * @param to first instant after it
   */
  boolean part(int from, int to) {
    if (from == 0) {
      return false;
    }
    double before = pascals[from - 1];
    for (int i = from; i < Math.min(to + 1, pascals.length); i++) {
      if (pascals[i] - before > CompressorEffect.LIFTED * full) {
        return true;
      }
    }
    return false;
  }

  /** Whether they are seen to stay as they were while a draw lasts. */
  boolean stay(int from, int to) {
    if (to - from < stays) {
      return false;
    }
    int last = Math.min(to, pascals.length) - 1;
    return Math.abs(pascals[last] - pascals[from]) < UNMOVED * full;
  }
}
