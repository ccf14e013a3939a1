package heatwake.analysis.expected;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;

/**
 * What a heater's output depends on: the wet bulb of the air that enters its coil, and the water
 * that enters it.
 *
 * <p>Wet bulb, because a coil colder than the dew point is driven by heat and moisture together. A
 * coil in air so dry that nothing condenses is driven by the dry bulb alone, however dry the air
 * is: the enthalpy that it can take is {@code cp (air - surface)}, which is that of air whose dew
 * point is the coil's surface (the dry and the wet part of a cooling coil meet there, ASHRAE
 * Handbook, HVAC Systems and Equipment, chapter on air-cooling coils, from memory). So air drier
 * than that counts as air with its dew point there.
 *
 * @param wetBulbK wet bulb of the air as the coil takes it
 * @param waterK entering water
 */
public record Conditions(Estimate wetBulbK, Estimate waterK) {
  /** Relative humidity where neither probe nor nameplate says any; ours. */
  static final double USUAL_HUMIDITY = 0.7;

  /**
   * Air hotter than this is assumed to hold no more vapour than air of this temperature: a hot day
   * warms the air without wetting it, and dew points above 25 Cel are rare anywhere (common
   * practice). 75 % at 27 Cel is 38 % at 39 Cel.
   */
  static final double NO_WETTER_ABOVE_K = 273.15 + 27;

  /** Standard uncertainty of an assumed humidity; ours. */
  static final double ASSUMED_HUMIDITY_SPREAD = 0.15;

  /**
   * How far below the entering air a dry coil's surface lies at full load in air of {@link
   * #SURFACE_STATED_K}, and how that differs between coils (rectangular, 4 K either way): by an
   * energy balance for coils whose surface is 6 to 8 K below 27 Cel, 80 % air; ours.
   */
  private static final double DRY_SURFACE_BELOW_K = 16.5;

  private static final double DRY_SURFACE_SPREAD_K = 4 / Math.sqrt(3);
  private static final double SURFACE_STATED_K = 273.15 + 40;

  /** In colder air there is less heat to take, and the surface lies less far below; ours. */
  private static final double DRY_SURFACE_PER_K = 0.25;

  private static final double LEAST_BELOW_K = 4;

  /** Mean conditions over instants; empty if no air or no water temperature is known there. */
  public static Optional<Conditions> of(Timeline timeline, Rig rig, int from, int to) {
    Optional<EnteringAir> air = EnteringAir.of(timeline, rig, from, to);
    Optional<Estimate> waterK = waterK(timeline, rig, from, to);
    if (air.isEmpty() || waterK.isEmpty()) {
      return Optional.empty();
    }
    Estimate airK = air.get().temperatureK();
    Estimate humidity = humidity(timeline, rig, airK.value(), from, to);
    return Optional.of(
        new Conditions(
            wetBulb(airK, humidity, Atmosphere.standard(rig.site().altitudeM())), waterK.get()));
  }

  /** The entering water alone. */
  static Optional<Estimate> waterK(Timeline timeline, Rig rig, int from, int to) {
    double waterK = mean(timeline, Channel.WATER_IN, from, to);
    return Double.isNaN(waterK)
        ? Optional.empty()
        : Optional.of(
            new Estimate(
                waterK, ProbeUncertainty.of(rig, Channel.WATER_IN).atTemperatureK(waterK)));
  }

  private static Estimate humidity(Timeline timeline, Rig rig, double airK, int from, int to) {
    double measured = mean(timeline, Channel.HUMIDITY_IN, from, to);
    return Double.isNaN(measured)
        ? new Estimate(assumedHumidity(rig, airK), ASSUMED_HUMIDITY_SPREAD)
        : new Estimate(measured, ProbeUncertainty.of(rig, Channel.HUMIDITY_IN).at(measured));
  }

  /** The humidity of air of some temperature, for want of a probe. */
  static double assumedHumidity(Rig rig, double airK) {
    return drierInHotAir(airK) * ratedHumidity(rig);
  }

  /** What is left in hot air of the relative humidity that is assumed elsewhere, 0 to 1. */
  public static double drierInHotAir(double airK) {
    return airK <= NO_WETTER_ABOVE_K
        ? 1
        : MoistAir.saturationPressurePa(NO_WETTER_ABOVE_K) / MoistAir.saturationPressurePa(airK);
  }

  /** The humidity of the nameplate's points. */
  static double ratedHumidity(Rig rig) {
    return rig.heater().ratings().stream()
        .map(Rating::humidity)
        .filter(stated -> stated.isPresent())
        .mapToDouble(stated -> stated.getAsDouble())
        .average()
        .orElse(USUAL_HUMIDITY);
  }

  /** Wet bulb, as the coil takes it, of air whose temperature and humidity are uncertain. */
  static Estimate wetBulb(Estimate airK, Estimate humidity, AbsolutePressure pressure) {
    double value = wetBulbK(airK.value(), humidity.value(), 0, pressure);
    double byAir = wetBulbK(airK.value() + 1, humidity.value(), 0, pressure) - value;
    double u = humidity.standard();
    double byHumidity =
        (wetBulbK(airK.value(), humidity.value() + u, 0, pressure)
                - wetBulbK(airK.value(), humidity.value() - u, 0, pressure))
            / 2;
    double s = DRY_SURFACE_SPREAD_K;
    double bySurface =
        (wetBulbK(airK.value(), humidity.value(), s, pressure)
                - wetBulbK(airK.value(), humidity.value(), -s, pressure))
            / 2;
    return new Estimate(
        value, Math.hypot(Math.hypot(byAir * airK.standard(), byHumidity), bySurface));
  }

  private static double wetBulbK(
      double airK, double humidity, double surfaceHigherK, AbsolutePressure pressure) {
    double belowK =
        DRY_SURFACE_BELOW_K + DRY_SURFACE_PER_K * (airK - SURFACE_STATED_K) - surfaceHigherK;
    double surfaceK = airK - Math.max(LEAST_BELOW_K, belowK);
    double least = MoistAir.saturationPressurePa(surfaceK) / MoistAir.saturationPressurePa(airK);
    double taken = Math.max(least, Math.min(1, humidity));
    return MoistAir.of(airK, taken, pressure).wetBulbK();
  }

  private static double mean(Timeline timeline, Channel channel, int from, int to) {
    return MovingMean.once(timeline.of(channel), from, to);
  }
}
