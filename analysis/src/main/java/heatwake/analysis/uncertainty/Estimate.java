package heatwake.analysis.uncertainty;

/**
 * A value with its standard uncertainty, both in the same unit (GUM, JCGM 100:2008, 2.3.1). Outputs
 * print the expanded uncertainty with coverage factor {@value #COVERAGE_FACTOR} (GUM 6.2.1).
 *
 * @param value best estimate
 * @param standard standard uncertainty, never negative
 */
public record Estimate(double value, double standard) {
  /** Coverage factor k of every expanded uncertainty shown to a person. */
  public static final double COVERAGE_FACTOR = 2;

  public Estimate {
    if (standard < 0) {
      throw new IllegalArgumentException("standard uncertainty is negative: " + standard);
    }
  }

  /** A value taken as exact. */
  public static Estimate exact(double value) {
    return new Estimate(value, 0);
  }

  /** Expanded uncertainty, k = 2. */
  public double expanded() {
    return COVERAGE_FACTOR * standard;
  }

  /**
   * Probability that the quantity lies above a limit, if it is distributed normally about the value
   * (GUM, annex G).
   */
  public double probabilityAbove(double limit) {
    if (standard == 0) {
      return value > limit ? 1 : 0;
    }
    return NormalDistribution.below((value - limit) / standard);
  }

  /** This estimate with value and uncertainty multiplied by an exact factor. */
  public Estimate times(double factor) {
    return new Estimate(value * factor, standard * Math.abs(factor));
  }

  /** The product of two uncorrelated estimates (GUM eq. 12). */
  public Estimate times(Estimate factor) {
    return new Estimate(
        value * factor.value, Math.hypot(standard * factor.value, value * factor.standard));
  }

  /** The sum of two uncorrelated estimates. */
  public Estimate plus(Estimate other) {
    return new Estimate(value + other.value, Math.hypot(standard, other.standard));
  }

  /** The difference of two uncorrelated estimates. */
  public Estimate minus(Estimate other) {
    return new Estimate(value - other.value, Math.hypot(standard, other.standard));
  }

  /**
   * The difference of two correlated estimates (GUM eq. 16): of two probes alike, most of their
   * common error leaves the difference.
   *
   * @param correlation -1 to 1
   */
  public Estimate minus(Estimate other, double correlation) {
    double variance =
        standard * standard
            + other.standard * other.standard
            - 2 * correlation * standard * other.standard;
    return new Estimate(value - other.value, Math.sqrt(Math.max(0, variance)));
  }

  /**
   * The quotient of two uncorrelated estimates (GUM eq. 12, multiplicative form). Where the
   * dividend is zero its absolute uncertainty still carries over.
   */
  public Estimate dividedBy(Estimate divisor) {
    double quotient = value / divisor.value;
    return new Estimate(
        quotient, Math.hypot(standard, quotient * divisor.standard) / Math.abs(divisor.value));
  }
}
