package heatwake.analysis.uncertainty;

/** The standard normal distribution, by Abramowitz and Stegun 26.2.17 (error below 7.5e-8). */
final class NormalDistribution {
  private static final double P = 0.2316419;
  private static final double[] B = {
    0.319381530, -0.356563782, 1.781477937, -1.821255978, 1.330274429
  };

  private NormalDistribution() {}

  /** Probability of a value below so many standard deviations above the mean. */
  static double below(double deviations) {
    double t = 1 / (1 + P * Math.abs(deviations));
    double sum = 0;
    for (int i = B.length - 1; i >= 0; i--) {
      sum = (sum + B[i]) * t;
    }
    double tail = Math.exp(-deviations * deviations / 2) / Math.sqrt(2 * Math.PI) * sum;
    return deviations < 0 ? tail : 1 - tail;
  }
}
