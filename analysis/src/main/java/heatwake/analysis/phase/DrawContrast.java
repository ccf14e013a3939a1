package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;

/**
 * By how much something else differs between the times at which the heater draws and those at which
 * it rests. What two probes keep wrong alike falls out of it.
 *
 * @param drawing mean while it draws; NaN where that was not seen for long enough
 * @param resting mean while it rests; NaN likewise
 */
record DrawContrast(double drawing, double resting) {
  /** Drawing begins, and resting ends, at these shares of the way to the highest draw (ours). */
  private static final double DRAWS = 0.4;

  private static final double RESTS = 0.2;

  /** Both are seen for so long at least (ours). */
  private static final double DRAWS_S = 600;

  private static final double RESTS_S = 60;

  /** The lowest draw is held for this share of a run, or as long as a rest is (ours). */
  private static final double LOWEST = 0.02;

  /** What has just begun to speak still tells of before: water that stood in pipes (ours). */
  private static final double FRESH_S = 60;

  /**
   * Lays values beside the draw.
   *
   * @param values NaN where they say nothing
   */
  static DrawContrast of(Timeline timeline, double[] values) {
    double[] draw = timeline.of(timeline.preferred(Channel.POWER, Channel.CURRENT));
    LevelHistogram levels = LevelHistogram.of(draw);
    int most = Math.max(timeline.instants(RESTS_S), levels.total() / 500);
    double highest = levels.highestHeld(most);
    double lowest =
        levels.quantile(Math.min(LOWEST, timeline.instants(RESTS_S) / (double) levels.total()));
    double draws = lowest + DRAWS * (highest - lowest);
    double rests = lowest + RESTS * (highest - lowest);
    int fresh = timeline.instants(FRESH_S);
    double[] sums = new double[2];
    int[] counts = new int[2];
    for (int i = fresh; i < draw.length; i++) {
      boolean heard = !Double.isNaN(values[i]) && !Double.isNaN(values[i - fresh]);
      if (heard && (draw[i] >= draws || draw[i] <= rests)) {
        int kind = draw[i] >= draws ? 1 : 0;
        sums[kind] += values[i];
        counts[kind]++;
      }
    }
    return new DrawContrast(
        counts[1] >= timeline.instants(DRAWS_S) ? sums[1] / counts[1] : Double.NaN,
        counts[0] >= timeline.instants(RESTS_S) ? sums[0] / counts[0] : Double.NaN);
  }

  /** Drawing less resting; NaN where one of them was not seen. */
  double difference() {
    return drawing - resting;
  }
}
