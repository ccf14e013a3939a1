package heatwake.analysis.water;

import heatwake.analysis.quantity.OutOfRangeException;

/**
 * Liquid fresh water by IAPWS-IF97 region 1: {@value #LOWEST_K} to {@value #HIGHEST_K} K, from the
 * saturation pressure to 100 MPa absolute. For every reading of a run use {@link PoolWater}, which
 * follows the same equations at one pressure and is several times as fast.
 *
 * <p>Every method throws {@link OutOfRangeException} naming value, unit and range for what is not
 * liquid water (ice, steam) or not a number.
 */
public final class Water {
  /** Ice point; below it IF97 does not hold. */
  public static final double LOWEST_K = 273.15;

  /** Upper end of region 1. */
  public static final double HIGHEST_K = 623.15;

  /** Upper end of region 1. */
  public static final double HIGHEST_PA = 100e6;

  /** Up to here water boils below {@link #BOILS_BELOW_PA}; saves the saturation equation. */
  private static final double COOL_K = 350;

  private static final double BOILS_BELOW_PA = 42e3;

  private Water() {}

  /** Specific enthalpy; zero of IF97 (internal energy of the liquid at the triple point). */
  public static double enthalpyJPerKg(double tK, double pPa) {
    checkLiquid(tK, pPa);
    return If97.enthalpyJPerKg(tK, pPa);
  }

  /** Density. */
  public static double densityKgPerM3(double tK, double pPa) {
    checkLiquid(tK, pPa);
    return If97.densityKgPerM3(tK, pPa);
  }

  /** Specific heat at constant pressure. */
  public static double cpJPerKgK(double tK, double pPa) {
    checkLiquid(tK, pPa);
    return If97.cpJPerKgK(tK, pPa);
  }

  /** Saturation pressure, IF97 equation (30), {@value #LOWEST_K} to 647.096 K. */
  public static double saturationPressurePa(double tK) {
    OutOfRangeException.check("water saturation temperature", tK, "K", LOWEST_K, 647.096);
    return If97.saturationPressurePa(tK);
  }

  /** Saturation temperature, IF97 equation (31), 611.213 Pa to 22.064 MPa. */
  public static double saturationTemperatureK(double pPa) {
    OutOfRangeException.check("water saturation pressure", pPa, "Pa", 611.213, 22.064e6);
    return If97.saturationTemperatureK(pPa);
  }

  /**
   * Heat coefficient k = rho(meter) (h_hot - h_cold) / (t_hot - t_cold) of EN 1434-1 and OIML R
   * 75-1, J/(m3 K): heat is k times the volume at the meter times the temperature difference. In a
   * pool heater "hot" is the outlet, and the meter usually sits in the cold inlet. For equal
   * temperatures it is the limit, density times specific heat.
   *
   * @param hotK temperature in the hot pipe
   * @param coldK temperature in the cold pipe
   * @param meterK temperature at the flow sensor
   * @param pPa absolute pressure (16 bar in the standards' tables)
   */
  public static double heatCoefficientJPerM3K(
      double hotK, double coldK, double meterK, double pPa) {
    double density = densityKgPerM3(meterK, pPa);
    double difference = hotK - coldK;
    if (Math.abs(difference) < 1e-6) {
      return density * cpJPerKgK(hotK, pPa);
    }
    return density * (enthalpyJPerKg(hotK, pPa) - enthalpyJPerKg(coldK, pPa)) / difference;
  }

  private static void checkLiquid(double tK, double pPa) {
    if (!(tK >= LOWEST_K && tK <= HIGHEST_K)) {
      throw new OutOfRangeException(
          "water temperature", tK, "K", LOWEST_K, HIGHEST_K, "liquid water only");
    }
    if (tK <= COOL_K && pPa >= BOILS_BELOW_PA && pPa <= HIGHEST_PA) {
      return;
    }
    double boilsPa = If97.saturationPressurePa(tK);
    if (!(pPa >= boilsPa && pPa <= HIGHEST_PA)) {
      throw new OutOfRangeException(
          "absolute water pressure", pPa, "Pa", boilsPa, HIGHEST_PA, "steam below");
    }
  }
}
