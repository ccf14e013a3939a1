package heatwake.dashboard.demo.plant.air;

/**
 * The weather of a stretch of days, in a few figures.
 *
 * @param meanC mean air temperature
 * @param swingK half the difference between warmest and coldest hour
 * @param humidityRatio moisture of the air mass, kg/kg
 * @param windMPerS mean wind at the water surface
 * @param clearness 0 overcast to 1 clear
 * @param restlessK standard deviation of the air temperature around its daily course
 */
public record Climate(
    double meanC,
    double swingK,
    double humidityRatio,
    double windMPerS,
    double clearness,
    double restlessK) {

  /** A climate by its mean temperature and the relative humidity at that temperature. */
  public static Climate of(
      double meanC, double swingK, double relativeHumidity, double windMPerS, double clearness) {
    double w =
        MoistAir.humidityRatio(relativeHumidity * MoistAir.saturationPa(meanC), Weather.SEA_LEVEL);
    return new Climate(meanC, swingK, w, windMPerS, clearness, 0.3);
  }
}
