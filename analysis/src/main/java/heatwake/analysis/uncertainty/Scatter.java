package heatwake.analysis.uncertainty;

import java.util.Arrays;

/** The random part of an uncertainty, read from the scatter of readings (GUM 4.2, type A). */
public final class Scatter {
  /** Share of the largest differences that is left out: steps of the process, not noise; ours. */
  private static final double TRIMMED_SHARE = 0.1;

  /** Variance of a normal variable after the largest tenth of its magnitudes is left out. */
  private static final double TRIMMED_VARIANCE = 0.6230;

  private static final int MOST_SAMPLES = 2000;
  private static final int MOST_BLOCKS = 500;

  private Scatter() {}

  /**
   * Mean of values between two indices with the uncertainty that their scatter gives it. Scatter
   * that hangs together counts for less than its number: the variance of the mean is s2/n (1 + 2
   * sum r_k), the autocorrelations r_k summed up to the first that is not positive.
   *
   * @param values NaN where there is none
   * @param from first index
   * @param to one past the last
   * @return NaN with no uncertainty if there are no values; a single value's uncertainty is unknown
   *     and given as zero
   */
  public static Estimate mean(double[] values, int from, int to) {
    // Long stretches are taken by block means: the variance of the whole mean is the same.
    int block = Math.max(1, (to - from) / MOST_BLOCKS);
    double[] kept = new double[(to - from) / block + 1];
    int n = 0;
    double total = 0;
    int known = 0;
    for (int begin = from; begin < to; begin += block) {
      double sum = 0;
      int count = 0;
      for (int i = begin; i < Math.min(to, begin + block); i++) {
        if (!Double.isNaN(values[i])) {
          sum += values[i];
          count++;
        }
      }
      if (count > 0) {
        kept[n++] = sum / count;
        total += sum;
        known += count;
      }
    }
    if (n == 0) {
      return new Estimate(Double.NaN, 0);
    }
    double mean = total / known;
    if (n == 1) {
      return new Estimate(mean, 0);
    }
    double squares = 0;
    for (int i = 0; i < n; i++) {
      kept[i] -= mean;
      squares += kept[i] * kept[i];
    }
    if (squares == 0) {
      return new Estimate(mean, 0);
    }
    double effective = n / Autocorrelation.inflation(kept, n);
    return new Estimate(mean, Math.sqrt(squares / (n - 1) / effective));
  }

  /**
   * Standard deviation of the noise of one reading, from differences between readings a lag apart.
   * Slow changes of the process drop out, quick ones are trimmed.
   *
   * @param values on an even grid, NaN where there is none
   * @param lag instants from one reading of the probe to its next
   * @return zero if there are fewer than ten differences
   */
  public static double noise(double[] values, int lag) {
    int stride = Math.max(1, (values.length - lag) / MOST_SAMPLES);
    double[] squares = new double[MOST_SAMPLES + 2];
    int n = 0;
    for (int i = lag; i < values.length && n < squares.length; i += stride) {
      double difference = values[i] - values[i - lag];
      if (!Double.isNaN(difference)) {
        squares[n++] = difference * difference;
      }
    }
    if (n < 10) {
      return 0;
    }
    Arrays.sort(squares, 0, n);
    int kept = (int) (n * (1 - TRIMMED_SHARE));
    double sum = 0;
    for (int i = 0; i < kept; i++) {
      sum += squares[i];
    }
    return Math.sqrt(sum / kept / TRIMMED_VARIANCE / 2);
  }
}
