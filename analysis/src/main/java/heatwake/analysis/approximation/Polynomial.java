package heatwake.analysis.approximation;

import java.util.function.DoubleUnaryOperator;

/**
 * A polynomial that interpolates a smooth function on an interval at the Chebyshev nodes, which
 * keeps its greatest error within a small factor of the best possible (Press et al., Numerical
 * Recipes, 3rd edition, section 5.8). It is made from the function itself when the program starts,
 * so there is no second set of coefficients to keep true; how well it follows is shown by the tests
 * of the class that uses it.
 */
public final class Polynomial {
  private final double middle;
  private final double perHalfWidth;
  private final double[] coefficients;

  private Polynomial(double low, double high, double[] coefficients) {
    this.middle = (low + high) / 2;
    this.perHalfWidth = 2 / (high - low);
    this.coefficients = coefficients;
  }

  /** Interpolates {@code function} on {@code low..high} by a polynomial of the given degree. */
  public static Polynomial through(
      DoubleUnaryOperator function, double low, double high, int degree) {
    int count = degree + 1;
    double[] sample = new double[count];
    for (int k = 0; k < count; k++) {
      double node = Math.cos(Math.PI * (k + 0.5) / count);
      sample[k] = function.applyAsDouble((low + high) / 2 + node * (high - low) / 2);
    }
    double[] chebyshev = new double[count];
    for (int j = 0; j < count; j++) {
      double sum = 0;
      for (int k = 0; k < count; k++) {
        sum += sample[k] * Math.cos(Math.PI * j * (k + 0.5) / count);
      }
      chebyshev[j] = sum * (j == 0 ? 1.0 : 2.0) / count;
    }
    return new Polynomial(low, high, powersOf(chebyshev));
  }

  /** Chebyshev series to powers, by the recurrence T(j+1) = 2 x T(j) - T(j-1). */
  private static double[] powersOf(double[] chebyshev) {
    int count = chebyshev.length;
    double[] powers = new double[count];
    double[] before = new double[count];
    double[] current = new double[count];
    before[0] = 1;
    if (count > 1) {
      current[1] = 1;
    }
    powers[0] = chebyshev[0];
    for (int j = 1; j < count; j++) {
      for (int i = 0; i < count; i++) {
        powers[i] += chebyshev[j] * current[i];
      }
      double[] next = new double[count];
      for (int i = 0; i < count; i++) {
        next[i] = (i > 0 ? 2 * current[i - 1] : 0) - before[i];
      }
      before = current;
      current = next;
    }
    return powers;
  }

  /** The value at {@code x}, which the caller keeps within the interval. */
  public double at(double x) {
    double scaled = (x - middle) * perHalfWidth;
    double sum = coefficients[coefficients.length - 1];
    for (int i = coefficients.length - 2; i >= 0; i--) {
      sum = sum * scaled + coefficients[i];
    }
    return sum;
  }
}
