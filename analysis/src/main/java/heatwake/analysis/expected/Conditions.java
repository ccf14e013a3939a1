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
 * What a heater's output depends on: the wet bulb of the air that enters its coil (the coil is
 * colder than the dew point in nearly every pool season, so heat and moisture drive it together)
 * and the water that enters it.
 */
public record Conditions(Estimate wetBulbK, Estimate waterK) {
  /** Relative humidity where neither probe nor nameplate says any; ours. */
  static final double USUAL_HUMIDITY = 0.7;

  /** Standard uncertainty of an assumed humidity; ours. */
  static final double ASSUMED_HUMIDITY_SPREAD = 0.15;

  /** How far the air at the coil may differ from the air outdoors; ours. */
  private static final double AMBIENT_FOR_INLET_K = 0.5;

  /** Mean conditions over instants; empty if no air or no water temperature is known there. */
  public static Optional<Conditions> of(Timeline timeline, Rig rig, int from, int to) {
    Channel air = airChannel(timeline);
    double airK = mean(timeline, air, from, to);
    Optional<Estimate> waterK = waterK(timeline, rig, from, to);
    if (Double.isNaN(airK) || waterK.isEmpty()) {
      return Optional.empty();
    }
    double airU =
        Math.hypot(
            ProbeUncertainty.of(rig, air).atTemperatureK(airK),
            air == Channel.AIR_AMBIENT ? AMBIENT_FOR_INLET_K : 0);
    Estimate humidity = humidity(timeline, rig, from, to);
    return Optional.of(
        new Conditions(
            wetBulb(
                new Estimate(airK, airU), humidity, Atmosphere.standard(rig.site().altitudeM())),
            waterK.get()));
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

  /** The channel that tells the entering air: at the coil, else outdoors. */
  public static Channel airChannel(Timeline timeline) {
    return timeline.has(Channel.AIR_IN) ? Channel.AIR_IN : Channel.AIR_AMBIENT;
  }

  private static Estimate humidity(Timeline timeline, Rig rig, int from, int to) {
    double measured = mean(timeline, Channel.HUMIDITY_IN, from, to);
    return Double.isNaN(measured)
        ? new Estimate(assumedHumidity(rig), ASSUMED_HUMIDITY_SPREAD)
        : new Estimate(measured, ProbeUncertainty.of(rig, Channel.HUMIDITY_IN).at(measured));
  }

  /** The humidity of the nameplate's points, for want of a probe. */
  static double assumedHumidity(Rig rig) {
    return rig.heater().ratings().stream()
        .map(Rating::humidity)
        .filter(stated -> stated.isPresent())
        .mapToDouble(stated -> stated.getAsDouble())
        .average()
        .orElse(USUAL_HUMIDITY);
  }

  /** Wet bulb of air whose temperature and humidity are uncertain. */
  static Estimate wetBulb(Estimate airK, Estimate humidity, AbsolutePressure pressure) {
    double value = wetBulbK(airK.value(), humidity.value(), pressure);
    double byAir = wetBulbK(airK.value() + 1, humidity.value(), pressure) - value;
    double byHumidity =
        (wetBulbK(airK.value(), humidity.value() + humidity.standard(), pressure)
                - wetBulbK(airK.value(), humidity.value() - humidity.standard(), pressure))
            / 2;
    return new Estimate(value, Math.hypot(byAir * airK.standard(), byHumidity));
  }

  private static double wetBulbK(double airK, double humidity, AbsolutePressure pressure) {
    return MoistAir.of(airK, Math.max(0, Math.min(1, humidity)), pressure).wetBulbK();
  }

  private static double mean(Timeline timeline, Channel channel, int from, int to) {
    return MovingMean.once(timeline.of(channel), from, to);
  }
}
