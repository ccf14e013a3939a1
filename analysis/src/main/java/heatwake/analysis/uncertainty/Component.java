package heatwake.analysis.uncertainty;

import java.util.List;

/**
 * One uncorrelated part of a combined uncertainty.
 *
 * @param standard standard uncertainty in the unit of the result, never negative
 * @param degreesOfFreedom how well it is known; infinite where it is taken as certain
 */
public record Component(double standard, double degreesOfFreedom) {
  public Component {
    if (!(standard >= 0)) {
      throw new IllegalArgumentException("standard uncertainty is negative: " + standard);
    }
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above zero, not " + degreesOfFreedom);
    }
  }

  /** A part whose uncertainty is taken as certain. */
  public static Component certain(double standard) {
    return new Component(standard, Double.POSITIVE_INFINITY);
  }

  /** Root of the sum of squares, GUM equation (10). */
  public static double combined(List<Component> components) {
    double sum = 0;
    for (Component component : components) {
      sum += component.standard * component.standard;
    }
    return Math.sqrt(sum);
  }

  /**
   * Effective degrees of freedom by Welch and Satterthwaite, GUM equation (G.2b). Not for
   * correlated parts. The GUM truncates to the next lower integer before looking up a coverage
   * factor.
   */
  public static double effectiveDegreesOfFreedom(List<Component> components) {
    double sum = 0;
    for (Component component : components) {
      double square = component.standard * component.standard;
      sum += square * square / component.degreesOfFreedom;
    }
    double combined = combined(components);
    double square = combined * combined;
    return sum == 0 ? Double.POSITIVE_INFINITY : square * square / sum;
  }
}
