package heatwake.analysis.uncertainty;

import java.util.Optional;

/**
 * Fits y = c + a x1 + b x2 by least squares. Standard uncertainties come from the residuals,
 * widened where these hang together from one value to the next.
 *
 * @param a slope by the first variable
 * @param b slope by the second variable
 */
public record LeastSquares(Estimate a, Estimate b) {
  private static final int FEWEST = 8;

  /** Below this share of independent variation the two slopes cannot be told apart. */
  private static final double LEAST_INDEPENDENCE = 1e-6;

  /**
   * Fits; the slope by a variable that does not vary is zero. Empty with fewer than {@value
   * #FEWEST} values, or where the variables do not vary independently.
   */
  public static Optional<LeastSquares> fit(double[] x1, double[] x2, double[] y, int n) {
    if (n < FEWEST) {
      return Optional.empty();
    }
    double m1 = mean(x1, n);
    double m2 = mean(x2, n);
    double my = mean(y, n);
    double s11 = 0;
    double s22 = 0;
    double s12 = 0;
    double s1y = 0;
    double s2y = 0;
    for (int i = 0; i < n; i++) {
      double d1 = x1[i] - m1;
      double d2 = x2[i] - m2;
      double dy = y[i] - my;
      s11 += d1 * d1;
      s22 += d2 * d2;
      s12 += d1 * d2;
      s1y += d1 * dy;
      s2y += d2 * dy;
    }
    // A variable that does not vary takes no part, though its mean may be a digit off its value.
    boolean only1 = isConstant(x2, n);
    boolean only2 = isConstant(x1, n);
    s11 = only2 ? 1 : s11;
    s22 = only1 ? 1 : s22;
    s12 = only1 || only2 ? 0 : s12;
    double determinant = s11 * s22 - s12 * s12;
    if (!(determinant > LEAST_INDEPENDENCE * s11 * s22)) {
      return Optional.empty();
    }
    double a = only2 ? 0 : (s22 * s1y - s12 * s2y) / determinant;
    double b = only1 ? 0 : (s11 * s2y - s12 * s1y) / determinant;
    double[] residuals = new double[n];
    double squares = 0;
    for (int i = 0; i < n; i++) {
      residuals[i] = y[i] - my - a * (x1[i] - m1) - b * (x2[i] - m2);
      squares += residuals[i] * residuals[i];
    }
    double variance = squares / (n - 3) * Autocorrelation.inflation(residuals, n);
    return Optional.of(
        new LeastSquares(
            only2 ? Estimate.exact(0) : new Estimate(a, Math.sqrt(variance * s22 / determinant)),
            only1 ? Estimate.exact(0) : new Estimate(b, Math.sqrt(variance * s11 / determinant))));
  }

  private static boolean isConstant(double[] values, int n) {
    for (int i = 1; i < n; i++) {
      if (values[i] != values[0]) {
        return false;
      }
    }
    return true;
  }

  private static double mean(double[] values, int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += values[i];
    }
    return sum / n;
  }
}
