package heatwake.analysis.duty;

import heatwake.analysis.quantity.AbsolutePressure;

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
   * Standard uncertainty of a saturation temperature, K.
   *
   * @param standardPa standard uncertainty of the pressure
   * @param gaugePa the pressure; a reading below the air's counts as none
   */
  public static double temperatureK(double standardPa, double gaugePa) {
    double absolutePa = Math.max(0, gaugePa) + AbsolutePressure.STANDARD_ATMOSPHERE.pa();
    return standardPa / absolutePa / PER_K;
  }
}
