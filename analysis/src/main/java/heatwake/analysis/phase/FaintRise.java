package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;

/**
 * A rise of the water that the pair's own uncertainty hides, but that goes with the draw: an
 * inverter at a small part of its speed warms the water by less than two probes may differ. What
 * they keep wrong alike falls out of the difference between drawing and resting.
 */
final class FaintRise {
  /** Drawing begins, and resting ends, at these shares of the way to the highest draw (ours). */
  private static final double DRAWS = 0.4;

  private static final double RESTS = 0.2;

  /** Both are seen for so long at least (ours). */
  private static final double DRAWS_S = 600;

  private static final double RESTS_S = 60;

  /** Water that has just begun to move still brings what stood in the pipes (ours). */
  private static final double FRESH_S = 60;

  private FaintRise() {}

  /**
   * Whether there is one.
   *
   * @param riseK difference of the pair, NaN where it says nothing
   */
  static boolean goesWithTheDraw(Timeline timeline, double[] riseK) {
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    if (!timeline.has(channel)) {
      return false;
    }
    double[] draw = timeline.of(channel);
    LevelHistogram levels = LevelHistogram.of(draw);
    int most = Math.max(timeline.instants(RESTS_S), levels.total() / 500);
    double highest = levels.highestHeld(most);
    double lowest = levels.quantile(0.02);
    double draws = lowest + DRAWS * (highest - lowest);
    double rests = lowest + RESTS * (highest - lowest);
    int fresh = timeline.instants(FRESH_S);
    double[] sums = new double[2];
    int[] counts = new int[2];
    for (int i = fresh; i < draw.length; i++) {
      boolean heard = !Double.isNaN(riseK[i]) && !Double.isNaN(riseK[i - fresh]);
      if (heard && (draw[i] >= draws || draw[i] <= rests)) {
        int kind = draw[i] >= draws ? 1 : 0;
        sums[kind] += riseK[i];
        counts[kind]++;
      }
    }
    return counts[0] >= timeline.instants(RESTS_S)
        && counts[1] >= timeline.instants(DRAWS_S)
        && sums[1] / counts[1] - sums[0] / counts[0] >= WaterRise.LEAST_RISE_K;
  }
}
