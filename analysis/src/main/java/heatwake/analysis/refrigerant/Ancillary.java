package heatwake.analysis.refrigerant;

/**
 * The usual ancillary form of a vapour-pressure curve: ln(p/pc) = Tc/T sum n (1 - T/Tc)^t.
 *
 * <p>The terms are pairs of coefficient and exponent, as printed.
 */
final class Ancillary implements SaturationLine {
  private final double criticalK;
  private final double criticalPa;
  private final double[][] terms;

  Ancillary(double criticalK, double criticalPa, double[]... terms) {
    this.criticalK = criticalK;
    this.criticalPa = criticalPa;
    this.terms = terms;
  }

  static double[] term(double coefficient, double exponent) {
    return new double[] {coefficient, exponent};
  }

  @Override
  public double pressurePa(double tK) {
    double theta = 1 - tK / criticalK;
    double sum = 0;
    for (double[] term : terms) {
      sum += term[0] * Math.pow(theta, term[1]);
    }
    return criticalPa * Math.exp(criticalK / tK * sum);
  }
}
