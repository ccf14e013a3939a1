package heatwake.analysis.air;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.OutOfRangeException;

/**
 * The standard atmosphere: ASHRAE Handbook, Fundamentals (2017), chapter 1, equation (3), p =
 * 101.325 kPa (1 - 2.25577e-5 Z)^5.2559, from -5000 m to 11 000 m. Weather moves the true pressure
 * by about 1.5 kPa to either side.
 */
public final class Atmosphere {
  /** Standard uncertainty of the true pressure against the standard one, from weather; ours. */
  public static final double WEATHER_PA = 1000;

  private static final double SEA_LEVEL_PA = 101_325;
  private static final double PER_METRE = 2.25577e-5;
  private static final double EXPONENT = 5.2559;

  private Atmosphere() {}

  /** Pressure of the standard atmosphere at an altitude. */
  public static AbsolutePressure standard(double altitudeM) {
    OutOfRangeException.check("altitude", altitudeM, "m", -5000, 11_000);
    return new AbsolutePressure(SEA_LEVEL_PA * Math.pow(1 - PER_METRE * altitudeM, EXPONENT));
  }
}
