package heatwake.dashboard.demo.plant.air;

/**
 * Moist air of the simulated site. Saturation pressure: Buck, Research Manual (1996), from memory;
 * enthalpy of the ideal mixture on 0 Cel.
 */
public final class MoistAir {
  /** Specific heat of dry air, J/(kg K). */
  public static final double DRY_HEAT = 1006;

  private static final double VAPOUR_HEAT = 1860;
  private static final double EVAPORATION_AT_0C = 2.501e6;
  private static final double MOLAR_MASS_RATIO = 0.622;
  private static final double GAS_CONSTANT_DRY = 287.05;

  private MoistAir() {}

  /** Saturation pressure in Pa, over ice below freezing. */
  public static double saturationPa(double airC) {
    return airC >= 0
        ? 611.21 * Math.exp((18.678 - airC / 234.5) * (airC / (257.14 + airC)))
        : 611.15 * Math.exp((23.036 - airC / 333.7) * (airC / (279.82 + airC)));
  }

  /** Humidity ratio in kg of vapour per kg of dry air at a vapour pressure. */
  public static double humidityRatio(double vapourPa, double totalPa) {
    return MOLAR_MASS_RATIO * vapourPa / (totalPa - vapourPa);
  }

  /** Vapour pressure in Pa at a humidity ratio. */
  public static double vapourPa(double humidityRatio, double totalPa) {
    return totalPa * humidityRatio / (MOLAR_MASS_RATIO + humidityRatio);
  }

  /** Enthalpy in J per kg of dry air. */
  public static double enthalpy(double airC, double humidityRatio) {
    return DRY_HEAT * airC + humidityRatio * (EVAPORATION_AT_0C + VAPOUR_HEAT * airC);
  }

  /** Enthalpy of saturated air in J per kg of dry air. */
  public static double saturatedEnthalpy(double airC, double totalPa) {
    return enthalpy(airC, humidityRatio(saturationPa(airC), totalPa));
  }

  /** Density of dry air in kg/m3; moisture is neglected. */
  public static double density(double airC, double totalPa) {
    return totalPa / (GAS_CONSTANT_DRY * (airC + 273.15));
  }
}
