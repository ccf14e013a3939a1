package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;

/**
 * Looks from a time without heat back to the heating before it and ahead to the heating after it: a
 * defrost has both. Its limits are ours; a defrost takes 1 to 12 min (common practice).
 */
final class HeatAround {
  /** The heating before is that of this time ahead, less the time in which the rise fell. */
  static final double BEFORE_S = 600;

  static final double FELL_WITHIN_S = 150;

  /** So much heating is seen before. */
  private static final double HEATED_S = 120;

  /** Heat is back within this time. */
  private static final double BACK_WITHIN_S = 600;

  private final Timeline timeline;
  private final Track compressor;
  private final double[] riseK;

  /**
   * Looks around in a rise.
   *
   * @param compressor whether the compressor runs
   * @param riseK temperature rise of the water, K, NaN where it says nothing
   */
  HeatAround(Timeline timeline, Track compressor, double[] riseK) {
    this.timeline = timeline;
    this.compressor = compressor;
    this.riseK = riseK;
  }

  /**
   * Mean of a quantity while it heated before.
   *
   * @param values the quantity on the timeline
   * @param cold the first instant without heat
   * @param aboveK it heats where the rise is above this, K
   * @return NaN where it hardly heated
   */
  double meanBefore(double[] values, int cold, double aboveK) {
    double sum = 0;
    int count = 0;
    int from = Math.max(0, cold - timeline.instants(BEFORE_S));
    for (int i = from; i < cold - timeline.instants(FELL_WITHIN_S); i++) {
      if (compressor.yes(i) && riseK[i] > aboveK && !Double.isNaN(values[i])) {
        sum += values[i];
        count++;
      }
    }
    return count < timeline.instants(HEATED_S) ? Double.NaN : sum / count;
  }

  /** The first instant of heat above a rise again; -1 where it does not come back in time. */
  int again(int from, double aboveK) {
    int until = Math.min(riseK.length, from + timeline.instants(BACK_WITHIN_S));
    for (int i = from; i < until; i++) {
      if (riseK[i] > aboveK && compressor.yes(i)) {
        return i;
      }
    }
    return -1;
  }

  /** Whether the run ends before heat would have to be back. */
  boolean isCutOff(int from) {
    return from + timeline.instants(BACK_WITHIN_S) >= riseK.length;
  }
}
