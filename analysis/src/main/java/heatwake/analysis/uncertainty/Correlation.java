package heatwake.analysis.uncertainty;

/**
 * Correlation coefficients between the inputs of a model. Starts with none; two probes of one batch
 * calibrated against one reference are the usual case of some.
 */
public final class Correlation {
  private final double[][] coefficients;

  private Correlation(double[][] coefficients) {
    this.coefficients = coefficients;
  }

  /** No input depends on another. */
  public static Correlation none(int inputs) {
    double[][] unit = new double[inputs][inputs];
    for (int i = 0; i < inputs; i++) {
      unit[i][i] = 1;
    }
    return new Correlation(unit);
  }

  /**
   * The same with one pair of inputs correlated.
   *
   * @param coefficient -1 to 1
   */
  public Correlation with(int first, int second, double coefficient) {
    if (!(coefficient >= -1 && coefficient <= 1) || first == second) {
      throw new IllegalArgumentException(
          "a correlation lies between -1 and 1 and joins two inputs, not "
              + coefficient
              + " between "
              + first
              + " and "
              + second);
    }
    double[][] copy = new double[coefficients.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = coefficients[i].clone();
    }
    copy[first][second] = coefficient;
    copy[second][first] = coefficient;
    return new Correlation(copy);
  }

  int inputs() {
    return coefficients.length;
  }

  double between(int first, int second) {
    return coefficients[first][second];
  }
}
