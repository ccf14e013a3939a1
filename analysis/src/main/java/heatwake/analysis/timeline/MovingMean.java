package heatwake.analysis.timeline;

/** Means of values over windows, each at the cost of two look-ups. NaN values are left out. */
public final class MovingMean {
  private final double[] sums;
  private final int[] counts;
  private final double base;

  public MovingMean(double[] values) {
    sums = new double[values.length + 1];
    counts = new int[values.length + 1];
    double offset = firstOf(values);
    for (int i = 0; i < values.length; i++) {
      boolean known = !Double.isNaN(values[i]);
      // Kept small, so that the difference of two long sums keeps its digits.
      sums[i + 1] = sums[i] + (known ? values[i] - offset : 0);
      counts[i + 1] = counts[i] + (known ? 1 : 0);
    }
    base = offset;
  }

  private static double firstOf(double[] values) {
    for (double value : values) {
      if (!Double.isNaN(value)) {
        return value;
      }
    }
    return 0;
  }

  /** One mean without the sums; NaN if nothing is known from {@code from} up to {@code to}. */
  public static double once(double[] values, int from, int to) {
    double sum = 0;
    int known = 0;
    for (int i = from; i < to; i++) {
      if (!Double.isNaN(values[i])) {
        sum += values[i];
        known++;
      }
    }
    return known == 0 ? Double.NaN : sum / known;
  }

  /** Number of known values from {@code from} up to but not including {@code to}. */
  public int count(int from, int to) {
    return counts[to] - counts[from];
  }

  /** Mean from {@code from} up to but not including {@code to}; NaN if nothing is known there. */
  public double mean(int from, int to) {
    int n = count(from, to);
    return n == 0 ? Double.NaN : base + (sums[to] - sums[from]) / n;
  }
}
