package heatwake.analysis.duty;

/** What an uncertain pressure makes of its saturation temperature. */
public final class SaturationSlope {
  /**
   * Relative change of saturation pressure per kelvin, the least of the refrigerants met here up to
   * a condensing temperature of 60 Cel (R-410A, Clausius-Clapeyron: L/(R T2)), so that no
   * uncertainty is flattered.
   */
  private static final double PER_K = 0.021;

  private SaturationSlope() {}

  /**
   * Uncertainty of a saturation temperature, K.
   *
   * @param relative uncertainty of the absolute pressure over that pressure
   */
  public static double temperatureK(double relative) {
    return relative / PER_K;
  }
}
