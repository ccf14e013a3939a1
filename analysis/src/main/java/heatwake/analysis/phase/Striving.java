package heatwake.analysis.phase;

import heatwake.analysis.timeline.MovingMean;

/**
 * What a quantity that follows the compressor with a lag strives for: value plus lag times slope,
 * so that a heater that cycles every few minutes is seen like one that runs on.
 */
final class Striving {
  /** Lift and rise come and go about so slowly (common practice: two or three minutes). */
  private static final double LAG_S = 150;

  /** The slope is taken over so long (ours). */
  private static final double SLOPE_S = 30;

  /** And over so many readings of the slower probe to each side (ours). */
  private static final int INTERVALS = 2;

  private Striving() {}

  /**
   * Shares of a full value that a quantity strives for; NaN where the quantity is.
   *
   * @param stepS time between the values, s
   * @param interval instants between two readings of the slower probe
   */
  static double[] shares(double[] values, double full, double stepS, int interval) {
    int size = values.length;
    int half = Math.max((int) Math.max(1, Math.round(SLOPE_S / 2 / stepS)), INTERVALS * interval);
    MovingMean means = new MovingMean(values);
    double[] strivesFor = new double[size];
    for (int i = 0; i < size; i++) {
      int before = Math.max(0, i - half);
      int after = Math.min(size, i + half + 1);
      // From the middle of the half before to that of the half after.
      double climb = means.mean(i, after) - means.mean(before, i + 1);
      double slope = climb / (Math.max(1, (after - before - 1) / 2.0) * stepS);
      strivesFor[i] = (values[i] + (Double.isNaN(slope) ? 0 : LAG_S * slope)) / full;
    }
    // The slope of a noisy reading is noisier than the reading.
    MovingMean smooth = new MovingMean(strivesFor);
    double[] shares = new double[size];
    for (int i = 0; i < size; i++) {
      shares[i] =
          Double.isNaN(strivesFor[i])
              ? Double.NaN
              : smooth.mean(Math.max(0, i - half), Math.min(size, i + half + 1));
    }
    return shares;
  }
}
