package heatwake.analysis.uncertainty;

import java.util.function.ToDoubleFunction;

/**
 * Combined standard uncertainty of a model's result: GUM (JCGM 100:2008) equations (13) and (16),
 * with each input's contribution by the numeric form of 5.1.3 note 2, Z = (f(x + u) - f(x - u)) /
 * 2.
 */
public final class Propagation {
  private Propagation() {}

  /** The result of a model of uncorrelated inputs. */
  public static Estimate of(ToDoubleFunction<double[]> model, Estimate... inputs) {
    return of(model, Correlation.none(inputs.length), inputs);
  }

  /** The result of a model of correlated inputs. */
  public static Estimate of(
      ToDoubleFunction<double[]> model, Correlation correlation, Estimate... inputs) {
    double[] contributions = contributions(model, inputs);
    return new Estimate(
        model.applyAsDouble(values(inputs)),
        Math.sqrt(Math.max(0, covariance(contributions, contributions, correlation))));
  }

  /**
   * Each input's signed contribution to the uncertainty of the result, in the result's unit: shows
   * what to improve.
   */
  public static double[] contributions(ToDoubleFunction<double[]> model, Estimate... inputs) {
    double[] contributions = new double[inputs.length];
    for (int i = 0; i < inputs.length; i++) {
      if (inputs[i].standard() > 0) {
        double[] up = values(inputs);
        double[] down = values(inputs);
        up[i] += inputs[i].standard();
        down[i] -= inputs[i].standard();
        contributions[i] = (model.applyAsDouble(up) - model.applyAsDouble(down)) / 2;
      }
    }
    return contributions;
  }

  /** Covariance of two results of the same inputs, GUM H.2.3. */
  public static double covariance(
      double[] contributions, double[] otherContributions, Correlation correlation) {
    if (contributions.length != correlation.inputs()
        || otherContributions.length != correlation.inputs()) {
      throw new IllegalArgumentException(
          contributions.length
              + " and "
              + otherContributions.length
              + " inputs do not fit a correlation of "
              + correlation.inputs());
    }
    double sum = 0;
    for (int i = 0; i < contributions.length; i++) {
      for (int j = 0; j < contributions.length; j++) {
        sum += contributions[i] * otherContributions[j] * correlation.between(i, j);
      }
    }
    return sum;
  }

  private static double[] values(Estimate[] inputs) {
    double[] values = new double[inputs.length];
    for (int i = 0; i < inputs.length; i++) {
      values[i] = inputs[i].value();
    }
    return values;
  }
}
