package heatwake.analysis.air;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.OutOfRangeException;

/**
 * A state of moist air: ASHRAE Handbook, Fundamentals (2017, SI), chapter 1, taken as a mixture of
 * perfect gases (within 1 % of the real-gas tables up to 50 Cel). -100 to 200 Cel.
 *
 * <p>Equations: saturation pressure (5) over ice and (6) over water, changing over at the triple
 * point; humidity ratio (20); specific volume (26); enthalpy (30); wet bulb (33) and below freezing
 * (35). The dew point is the inverse of (5) and (6).
 *
 * @param dryBulbK temperature of the air
 * @param humidityRatio mass of vapour per mass of dry air
 * @param pressure pressure of the air
 */
public record MoistAir(double dryBulbK, double humidityRatio, AbsolutePressure pressure) {
  /** Lower end of the equations. */
  public static final double LOWEST_K = 173.15;

  /** Upper end of the equations. */
  public static final double HIGHEST_K = 473.15;

  /** Mole mass of water over that of dry air. */
  private static final double MASS_RATIO = 0.621945;

  private static final double ICE_POINT_K = 273.15;
  private static final double TRIPLE_POINT_K = 273.16;
  private static final double DRY_AIR_GAS_J_PER_KG_K = 287.042;
  private static final double VOLUME_FACTOR = 1.607858;
  private static final double LEAST_PRESSURE_PA = 10_000;
  private static final double MOST_PRESSURE_PA = 1_000_000;
  private static final double CLOSE_ENOUGH_K = 1e-7;
  private static final int MOST_STEPS = 100;

  public MoistAir {
    checkTemperature("air temperature", dryBulbK);
    OutOfRangeException.check("humidity ratio", humidityRatio, "kg/kg", 0, 10);
    OutOfRangeException.check(
        "air pressure", pressure.pa(), "Pa", LEAST_PRESSURE_PA, MOST_PRESSURE_PA);
  }

  /**
   * Air by its relative humidity.
   *
   * @param relativeHumidity 0 to 1
   * @throws OutOfRangeException for a humidity outside 0 to 100 %, or where the air would boil
   */
  public static MoistAir of(double dryBulbK, double relativeHumidity, AbsolutePressure pressure) {
    OutOfRangeException.check("relative humidity", relativeHumidity * 100, "%", 0, 100);
    double vapourPa = relativeHumidity * saturationPressurePa(dryBulbK);
    return new MoistAir(dryBulbK, humidityRatioAt(vapourPa, pressure.pa()), pressure);
  }

  /**
   * Air by its wet bulb.
   *
   * @throws OutOfRangeException when the wet bulb is above the dry bulb, or lower than dry air
   *     would make it
   */
  public static MoistAir fromWetBulb(double dryBulbK, double wetBulbK, AbsolutePressure pressure) {
    checkTemperature("air temperature", dryBulbK);
    double driest = new MoistAir(dryBulbK, 0, pressure).wetBulbK();
    OutOfRangeException.check("wet bulb", wetBulbK, "K", driest, dryBulbK);
    double ratio = humidityRatioFromWetBulb(dryBulbK, wetBulbK, pressure.pa());
    return new MoistAir(dryBulbK, Math.max(0, ratio), pressure);
  }

  /** Saturation pressure of water, equations (5) and (6). */
  public static double saturationPressurePa(double tK) {
    checkTemperature("saturation temperature", tK);
    return Math.exp(logSaturation(tK));
  }

  /** Partial pressure of the vapour, equation (20) solved for it. */
  public double vapourPressurePa() {
    return pressure.pa() * humidityRatio / (MASS_RATIO + humidityRatio);
  }

  /** Relative humidity, 0 to 1; above 1 in fog. */
  public double relativeHumidity() {
    return vapourPressurePa() / saturationPressurePa(dryBulbK);
  }

  /** Enthalpy per mass of dry air, zero for dry air at 0 Cel, equation (30). */
  public double enthalpyJPerKgDryAir() {
    double t = dryBulbK - ICE_POINT_K;
    return 1006 * t + humidityRatio * (2_501_000 + 1860 * t);
  }

  /** Volume per mass of dry air, equation (26). */
  public double volumeM3PerKgDryAir() {
    return DRY_AIR_GAS_J_PER_KG_K * dryBulbK * (1 + VOLUME_FACTOR * humidityRatio) / pressure.pa();
  }

  /** Density of the moist air. */
  public double densityKgPerM3() {
    return (1 + humidityRatio) / volumeM3PerKgDryAir();
  }

  /**
   * Temperature at which this air, cooled at its pressure, begins to lose water.
   *
   * @throws OutOfRangeException for air drier than saturated air at {@value #LOWEST_K} K
   */
  public double dewPointK() {
    double vapourPa = vapourPressurePa();
    OutOfRangeException.check(
        "vapour pressure",
        vapourPa,
        "Pa",
        saturationPressurePa(LOWEST_K),
        saturationPressurePa(HIGHEST_K));
    double wanted = Math.log(vapourPa);
    double low = LOWEST_K;
    double high = HIGHEST_K;
    double tK = Math.min(dryBulbK, HIGHEST_K);
    // Newton on the logarithm, which is nearly straight in 1/T; a bracket keeps it safe.
    for (int i = 0; i < MOST_STEPS; i++) {
      double error = logSaturation(tK) - wanted;
      if (error > 0) {
        high = tK;
      } else {
        low = tK;
      }
      double step = error / logSaturationSlope(tK);
      double next = tK - step;
      if (!(next > low && next < high)) {
        next = (low + high) / 2;
      }
      if (Math.abs(next - tK) < CLOSE_ENOUGH_K) {
        return next;
      }
      tK = next;
    }
    return tK;
  }

  /** Thermodynamic wet bulb, equations (33) and (35), by halving the interval. */
  public double wetBulbK() {
    double low = LOWEST_K;
    double high = dryBulbK;
    while (high - low > CLOSE_ENOUGH_K) {
      double middle = (low + high) / 2;
      if (humidityRatioFromWetBulb(dryBulbK, middle, pressure.pa()) > humidityRatio) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double humidityRatioAt(double vapourPa, double pressurePa) {
    // Where the vapour pressure reaches the pressure of the air, the water boils.
    OutOfRangeException.check("vapour pressure", vapourPa, "Pa", 0, 0.9 * pressurePa);
    return MASS_RATIO * vapourPa / (pressurePa - vapourPa);
  }

  private static double humidityRatioFromWetBulb(
      double dryBulbK, double wetBulbK, double pressurePa) {
    double saturatedPa = Math.min(Math.exp(logSaturation(wetBulbK)), 0.9 * pressurePa);
    double saturated = MASS_RATIO * saturatedPa / (pressurePa - saturatedPa);
    double dry = dryBulbK - ICE_POINT_K;
    double wet = wetBulbK - ICE_POINT_K;
    return wet >= 0
        ? ((2501 - 2.326 * wet) * saturated - 1.006 * (dry - wet))
            / (2501 + 1.86 * dry - 4.186 * wet)
        : ((2830 - 0.24 * wet) * saturated - 1.006 * (dry - wet)) / (2830 + 1.86 * dry - 2.1 * wet);
  }

  private static double logSaturation(double tK) {
    if (tK <= TRIPLE_POINT_K) {
      return -5.6745359e3 / tK
          + 6.3925247
          + tK * (-9.677843e-3 + tK * (6.2215701e-7 + tK * (2.0747825e-9 - tK * 9.484024e-13)))
          + 4.1635019 * Math.log(tK);
    }
    return -5.8002206e3 / tK
        + 1.3914993
        + tK * (-4.8640239e-2 + tK * (4.1764768e-5 - tK * 1.4452093e-8))
        + 6.5459673 * Math.log(tK);
  }

  private static double logSaturationSlope(double tK) {
    if (tK <= TRIPLE_POINT_K) {
      return 5.6745359e3 / (tK * tK)
          - 9.677843e-3
          + tK * (2 * 6.2215701e-7 + tK * (3 * 2.0747825e-9 - tK * 4 * 9.484024e-13))
          + 4.1635019 / tK;
    }
    return 5.8002206e3 / (tK * tK)
        - 4.8640239e-2
        + tK * (2 * 4.1764768e-5 - tK * 3 * 1.4452093e-8)
        + 6.5459673 / tK;
  }

  private static void checkTemperature(String what, double tK) {
    OutOfRangeException.check(what, tK, "K", LOWEST_K, HIGHEST_K);
  }
}
