package heatwake.analysis.phase;

import java.util.Arrays;

/**
 * Resting and heating level of a temperature rise, from the run's own distribution.
 *
 * @param restingK level at rest: the zero error of the probe pair, or zero where the run shows none
 * @param fullK rise above it while heating
 * @param heats whether there is a heating level at all
 */
record RiseLevels(double restingK, double fullK, boolean heats) {
  private static final int MOST_SAMPLES = 4000;

  /**
   * @param rise differences, NaN where not to be used
   * @param believedK least difference that no probe pair of this uncertainty shows by itself
   */
  static RiseLevels of(double[] rise, double believedK) {
    double[] sorted = sample(rise);
    if (sorted.length == 0) {
      return new RiseLevels(0, 0, false);
    }
    // Two levels: split where the two sides differ most between them and least within (Otsu 1979).
    int n = sorted.length;
    double sum = Arrays.stream(sorted).sum();
    double left = 0;
    int split = 0;
    double best = -1;
    for (int k = 1; k < n; k++) {
      left += sorted[k - 1];
      double between = left / k - (sum - left) / (n - k);
      double spread = between * between * k * (n - k);
      if (spread > best) {
        best = spread;
        split = k;
      }
    }
    double lower = sorted[split / 2];
    double upper = sorted[split + (n - split) / 2];
    boolean twoLevels = split > 0 && upper - lower > believedK && Math.abs(lower) < 0.4 * upper;
    if (twoLevels) {
      return new RiseLevels(lower, upper - lower, true);
    }
    double middle = sorted[n / 2];
    return middle > believedK ? new RiseLevels(0, middle, true) : new RiseLevels(0, 0, false);
  }

  private static double[] sample(double[] rise) {
    int stride = Math.max(1, rise.length / MOST_SAMPLES);
    double[] some = new double[rise.length / stride + 1];
    int count = 0;
    for (int i = 0; i < rise.length; i += stride) {
      if (!Double.isNaN(rise[i])) {
        some[count++] = rise[i];
      }
    }
    double[] sorted = Arrays.copyOf(some, count);
    Arrays.sort(sorted);
    return sorted;
  }
}
