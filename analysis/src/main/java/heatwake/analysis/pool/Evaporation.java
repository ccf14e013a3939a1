package heatwake.analysis.pool;

import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.uncertainty.Estimate;

/**
 * Evaporation from a pool: ASHRAE Handbook, HVAC Applications, chapter on natatoriums, w = A (pw -
 * pa)(0.089 + 0.0782 V) / Y with A in m2, pressures in kPa, V in m/s, latent heat Y in kJ/kg, w in
 * kg/s. The equation holds for a pool in use; times an activity factor for others.
 */
public final class Evaporation {
  /** Most wind that is taken: a storm, far beyond any measurement on pools; ours. */
  public static final double HIGHEST_WIND_M_PER_S = 20;

  private static final double STILL_W_PER_M2_KPA = 89;
  private static final double PER_WIND_W_S_PER_M3_KPA = 78.2;

  private static final double QUIET_STILL = 0.72;
  private static final double QUIET_WINDY = 0.84;
  private static final double FIVE_MPH_M_PER_S = 2.2352;

  /** Scatter of the measurements and of what later work makes of them, as a share; ours. */
  private static final double QUIET_SHARE = 0.1;

  private static final double ICE_POINT_K = 273.15;

  private Evaporation() {}

  /**
   * Heat that evaporation takes by the equation itself (factor 1), per area. Negative when the air
   * is so moist that water condenses on the pool.
   *
   * @throws OutOfRangeException for what {@link MoistAir} refuses, or for the wind
   */
  public static double heatWPerM2(
      double waterK, double airK, double relativeHumidity, double windMPerS) {
    OutOfRangeException.check("relative humidity", relativeHumidity * 100, "%", 0, 100);
    double excessKpa =
        (MoistAir.saturationPressurePa(waterK)
                - relativeHumidity * MoistAir.saturationPressurePa(airK))
            / 1e3;
    return transferWPerM2Kpa(windMPerS) * excessKpa;
  }

  /** Heat per area and kilopascal of vapour pressure difference: 89 + 78.2 V. */
  static double transferWPerM2Kpa(double windMPerS) {
    OutOfRangeException.check(
        "wind at the water surface", windMPerS, "m/s", 0, HIGHEST_WIND_M_PER_S);
    return STILL_W_PER_M2_KPA + PER_WIND_W_S_PER_M3_KPA * windMPerS;
  }

  /**
   * Activity factor of a quiet outdoor pool: 0.72 in still air, 0.84 at 5 mph, straight between,
   * 0.84 above (Jones, Smith and Löf, Solar Energy 53 (1994) 3-7, measured). A pool with bathers is
   * 40 to 70 % above a quiet one (ASHRAE Transactions 104 (1998), paper 4146).
   */
  public static Estimate quietFactor(double windMPerS) {
    double share = Math.min(1, Math.max(0, windMPerS / FIVE_MPH_M_PER_S));
    double factor = QUIET_STILL + share * (QUIET_WINDY - QUIET_STILL);
    return new Estimate(factor, QUIET_SHARE * factor);
  }

  /**
   * Latent heat of evaporation: a straight line through IAPWS-95 at 20 and 40 Cel, within 0.01 %
   * between them.
   */
  public static double latentHeatJPerKg(double waterK) {
    OutOfRangeException.check("pool water temperature", waterK, "K", ICE_POINT_K, ICE_POINT_K + 60);
    return 2_453_520 - 2377 * (waterK - ICE_POINT_K - 20);
  }
}
