package heatwake.analysis.pool;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Propagation;
import java.util.function.ToDoubleFunction;

/**
 * Heat that the surface of a quiet outdoor pool gives to air and sky, without the sun: what it
 * loses at night, and the part of the loss that goes on by day.
 *
 * <ul>
 *   <li>Evaporation by {@link Evaporation} with the factor measured on quiet pools.
 *   <li>Convection in the ratio of Bowen: the same transfer coefficient times cp p / (0.622 Y),
 *       about 67 Pa/K at sea level; 20 % standard uncertainty (ours).
 *   <li>Long-wave radiation: emissivity 0.95 against a sky between air temperature (overcast) and
 *       20 K below (clear), ISO/TR 12596:1995; the sky is not known, so 10 K with a rectangular
 *       uncertainty.
 *   <li>Under a cover evaporation nearly ceases; convection and radiation from the cover are taken
 *       as those of the water, with 25 % more uncertainty (ours). That saves about half, as the 50
 *       to 70 % which the US Department of Energy states for covers.
 * </ul>
 *
 * The parts share their inputs, so the uncertainty of the whole is propagated through the whole.
 *
 * @param evaporationW heat taken by evaporation
 * @param convectionW heat given to the air
 * @param radiationW heat radiated to the sky, net
 * @param totalW all three
 * @param slopeWPerK by how much the loss grows for each kelvin of water temperature
 */
public record SurfaceLoss(
    Estimate evaporationW,
    Estimate convectionW,
    Estimate radiationW,
    Estimate totalW,
    double slopeWPerK) {

  private static final double STEFAN_BOLTZMANN = 5.670374419e-8;
  private static final double EMISSIVITY = 0.95;
  private static final double CP_AIR_J_PER_KG_K = 1006;
  private static final double MASS_RATIO = 0.621945;

  /** Sky below air: 0 to 20 K, rectangular. */
  private static final Estimate SKY_BELOW_AIR_K = new Estimate(10, 10 / Math.sqrt(3));

  /** The coldest sky of that range. */
  private static final Estimate CLEAR_SKY_K = Estimate.exact(20);

  private static final Estimate CONVECTION_FACTOR = new Estimate(1, 0.2);
  private static final Estimate OPEN = Estimate.exact(1);
  private static final Estimate COVERED_EVAPORATION = new Estimate(0.05, 0.03);
  private static final Estimate COVERED_REST = new Estimate(1, 0.25);

  private static final double SLOPE_STEP_K = 0.5;

  // Places of the inputs in the vector that the model takes.
  private static final int WATER = 0;
  private static final int AIR = 1;
  private static final int HUMIDITY = 2;
  private static final int WIND = 3;
  private static final int FACTOR = 4;
  private static final int SKY = 5;
  private static final int CONVECTION = 6;
  private static final int EVAPORATION_LEFT = 7;
  private static final int REST_LEFT = 8;

  /**
   * Loss of an uncovered surface nobody bathes in.
   *
   * @throws OutOfRangeException naming what is out of range
   */
  public static SurfaceLoss open(double areaM2, Estimate waterK, Weather weather) {
    return of(areaM2, waterK, weather, quiet(weather), SKY_BELOW_AIR_K, OPEN, OPEN);
  }

  /**
   * Loss of an uncovered surface under the coldest sky.
   *
   * @param activity factor of the evaporation equation, 1 for a pool in use
   * @throws OutOfRangeException naming what is out of range
   */
  static SurfaceLoss underClearSky(
      double areaM2, Estimate waterK, Weather weather, double activity) {
    return of(areaM2, waterK, weather, Estimate.exact(activity), CLEAR_SKY_K, OPEN, OPEN);
  }

  /**
   * Loss of a covered surface.
   *
   * @throws OutOfRangeException naming what is out of range
   */
  public static SurfaceLoss covered(double areaM2, Estimate waterK, Weather weather) {
    return of(
        areaM2,
        waterK,
        weather,
        quiet(weather),
        SKY_BELOW_AIR_K,
        COVERED_EVAPORATION,
        COVERED_REST);
  }

  private static Estimate quiet(Weather weather) {
    return Evaporation.quietFactor(weather.windMPerS().value());
  }

  private static SurfaceLoss of(
      double areaM2,
      Estimate waterK,
      Weather weather,
      Estimate factor,
      Estimate skyBelowAirK,
      Estimate evaporationLeft,
      Estimate restLeft) {
    OutOfRangeException.check("pool surface", areaM2, "m2", 0.1, 1e5);
    double windMPerS = weather.windMPerS().value();
    OutOfRangeException.check(
        "wind at the water surface", windMPerS, "m/s", 0, Evaporation.HIGHEST_WIND_M_PER_S);
    double pressurePa = weather.pressure().pa();
    Estimate[] inputs = {
      waterK,
      weather.airK(),
      weather.relativeHumidity(),
      weather.windMPerS(),
      factor,
      skyBelowAirK,
      CONVECTION_FACTOR,
      evaporationLeft,
      restLeft
    };
    ToDoubleFunction<double[]> evaporation = x -> areaM2 * evaporationWPerM2(x);
    ToDoubleFunction<double[]> convection = x -> areaM2 * convectionWPerM2(x, pressurePa);
    ToDoubleFunction<double[]> radiation = x -> areaM2 * radiationWPerM2(x);
    ToDoubleFunction<double[]> total =
        x ->
            evaporation.applyAsDouble(x) + convection.applyAsDouble(x) + radiation.applyAsDouble(x);
    return new SurfaceLoss(
        Propagation.of(evaporation, inputs),
        Propagation.of(convection, inputs),
        Propagation.of(radiation, inputs),
        Propagation.of(total, inputs),
        slope(total, inputs));
  }

  /** Water that evaporates. */
  public double evaporationKgPerS(double waterK) {
    return evaporationW.value() / Evaporation.latentHeatJPerKg(waterK);
  }

  private static double evaporationWPerM2(double[] x) {
    return x[EVAPORATION_LEFT]
        * x[FACTOR]
        * Evaporation.heatWPerM2(x[WATER], x[AIR], Math.min(1, Math.max(0, x[HUMIDITY])), wind(x));
  }

  /** A value near its limit must not leave the range one standard uncertainty to the side. */
  private static double wind(double[] x) {
    return Math.min(Evaporation.HIGHEST_WIND_M_PER_S, Math.max(0, x[WIND]));
  }

  private static double convectionWPerM2(double[] x, double pressurePa) {
    double kpaPerK =
        CP_AIR_J_PER_KG_K
            * pressurePa
            / (MASS_RATIO * Evaporation.latentHeatJPerKg(x[WATER]))
            / 1e3;
    return x[REST_LEFT]
        * x[CONVECTION]
        * x[FACTOR]
        * Evaporation.transferWPerM2Kpa(wind(x))
        * kpaPerK
        * (x[WATER] - x[AIR]);
  }

  private static double radiationWPerM2(double[] x) {
    return x[REST_LEFT]
        * EMISSIVITY
        * STEFAN_BOLTZMANN
        * (Math.pow(x[WATER], 4) - Math.pow(x[AIR] - x[SKY], 4));
  }

  private static double slope(ToDoubleFunction<double[]> total, Estimate[] inputs) {
    double[] warmer = new double[inputs.length];
    double[] cooler = new double[inputs.length];
    for (int i = 0; i < inputs.length; i++) {
      warmer[i] = inputs[i].value();
      cooler[i] = inputs[i].value();
    }
    warmer[WATER] += SLOPE_STEP_K;
    cooler[WATER] -= SLOPE_STEP_K;
    return (total.applyAsDouble(warmer) - total.applyAsDouble(cooler)) / (2 * SLOPE_STEP_K);
  }
}
