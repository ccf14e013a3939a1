package heatwake.analysis.zero;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.uncertainty.Scatter;

/**
 * Whether a rest after a run ended while the exchanger still gave up its heat. The thirds of the
 * whole rest tell how the difference fades (each falls by the same share of the one before), and so
 * how much of it was left: more than noise can hide in the last minute alone.
 *
 * @param before fall from the first third to the second, K
 * @param last fall from the second to the last, K
 * @param noiseK standard uncertainty of a fall
 */
record Fading(double before, double last, double noiseK) {
  /** A fall, or a rest of it, that is no more than this leaves a zero, K; ours. */
  private static final double NOTHING_K = 0.05;

  private static final double BEYOND_DOUBT = 3;

  static Fading of(double[] differenceK, int from, int to) {
    int third = (to - from) / 3;
    double first = Stretch.mean(differenceK, from, from + third);
    double second = Stretch.mean(differenceK, from + third, to - third);
    double last = Stretch.mean(differenceK, to - third, to);
    double noiseK = Scatter.noise(differenceK, 1) * Math.sqrt(2.0 / Math.max(1, third));
    return new Fading(first - second, second - last, noiseK);
  }

  /** Whether more is left than a zero may hold. */
  boolean goesOn() {
    double fall = Math.abs(last);
    if (!(fall > Math.max(NOTHING_K, BEYOND_DOUBT * noiseK)) || before * last < 0) {
      return false;
    }
    double slower = Math.abs(before) - fall;
    return slower <= 0 || fall * fall / slower > NOTHING_K;
  }
}
