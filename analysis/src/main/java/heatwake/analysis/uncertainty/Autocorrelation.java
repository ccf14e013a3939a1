package heatwake.analysis.uncertainty;

/** How far values hang together with those before them. */
final class Autocorrelation {
  private static final int LONGEST_LAG = 200;

  private Autocorrelation() {}

  /**
   * How many times the variance of a mean is that of as many independent values: 1 + 2 sum r_k, the
   * autocorrelations summed up to the first that is not positive.
   *
   * @param residuals deviations from the mean or the fit, the first {@code n} of them
   */
  static double inflation(double[] residuals, int n) {
    double squares = 0;
    for (int i = 0; i < n; i++) {
      squares += residuals[i] * residuals[i];
    }
    if (squares == 0) {
      return 1;
    }
    double inflation = 1;
    int longest = Math.min(LONGEST_LAG, n / 4);
    for (int lag = 1; lag <= longest; lag++) {
      double product = 0;
      for (int i = lag; i < n; i++) {
        product += residuals[i] * residuals[i - lag];
      }
      if (product <= 0) {
        break;
      }
      inflation += 2 * product / squares;
    }
    return Math.min(inflation, Math.max(1, n));
  }
}
