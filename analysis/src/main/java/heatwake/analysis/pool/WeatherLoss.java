package heatwake.analysis.pool;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The pool's surface loss from the weather of a run. Humidity is measured where the heater draws
 * its air, so its vapour pressure is carried over to the outdoor air where that has a probe of its
 * own. Readings that no weather has are left aside, never an error.
 */
final class WeatherLoss {
  /** Pools outside this are not modelled: ice below, no pool above. */
  private static final double COLDEST_POOL_K = 274.15;

  private static final double WARMEST_POOL_K = 323.15;

  private static final double LOWEST_ALTITUDE_M = -500;
  private static final double HIGHEST_ALTITUDE_M = 5000;

  private WeatherLoss() {}

  /** Loss at the run's mean weather, if surface, air, humidity and wind are known. */
  static Optional<SurfaceLoss> of(Timeline timeline, Rig rig, Estimate poolK) {
    OptionalDouble surface = rig.pool().surfaceM2();
    if (surface.isEmpty() || !covers(poolK)) {
      return Optional.empty();
    }
    double area = surface.getAsDouble();
    return weather(timeline, rig)
        .map(
            weather ->
                rig.pool().covered()
                    ? SurfaceLoss.covered(area, poolK, weather)
                    : SurfaceLoss.open(area, poolK, weather));
  }

  /** Whether a pool of this temperature is modelled. */
  static boolean covers(Estimate poolK) {
    return poolK.value() > COLDEST_POOL_K && poolK.value() < WARMEST_POOL_K;
  }

  /** The run's mean weather, if air, humidity and wind are known. */
  static Optional<Weather> weather(Timeline timeline, Rig rig) {
    Optional<Estimate> air = mean(timeline, rig, airChannel(timeline));
    Optional<Estimate> intake = mean(timeline, rig, intakeChannel(timeline));
    Optional<Estimate> humidity = mean(timeline, rig, Channel.HUMIDITY_IN);
    Optional<Estimate> wind = mean(timeline, rig, Channel.WIND_SPEED);
    if (air.isEmpty()
        || intake.isEmpty()
        || humidity.isEmpty()
        || wind.isEmpty()
        || wind.get().value() > Evaporation.HIGHEST_WIND_M_PER_S) {
      return Optional.empty();
    }
    return Optional.of(
        new Weather(
            air.get(),
            carriedOver(humidity.get(), intake.get().value(), air.get().value()),
            wind.get(),
            pressure(rig)));
  }

  /** What it lacks, in words; empty when nothing. */
  static List<String> missing(Timeline timeline, Rig rig) {
    List<String> missing = new ArrayList<>();
    if (rig.pool().surfaceM2().isEmpty()) {
      missing.add("surface in [pool]");
    }
    if (!timeline.has(Channel.AIR_AMBIENT) && !timeline.has(Channel.AIR_IN)) {
      missing.add("air-ambient");
    }
    if (!timeline.has(Channel.HUMIDITY_IN)) {
      missing.add("humidity-in");
    }
    if (!timeline.has(Channel.WIND_SPEED)) {
      missing.add("wind-speed");
    }
    return missing;
  }

  private static Channel airChannel(Timeline timeline) {
    return timeline.preferred(Channel.AIR_AMBIENT, Channel.AIR_IN);
  }

  private static Channel intakeChannel(Timeline timeline) {
    return timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
  }

  private static Optional<Estimate> mean(Timeline timeline, Rig rig, Channel channel) {
    double value = MovingMean.once(timeline.of(channel), 0, timeline.size());
    if (Double.isNaN(value)) {
      return Optional.empty();
    }
    ProbeUncertainty probe = ProbeUncertainty.of(rig, channel);
    return Optional.of(
        switch (channel.quantity()) {
          case TEMPERATURE -> new Estimate(value, probe.atTemperatureK(value));
          default -> new Estimate(Math.max(0, value), probe.at(value));
        });
  }

  private static Estimate carriedOver(Estimate humidity, double fromK, double toK) {
    double factor = MoistAir.saturationPressurePa(fromK) / MoistAir.saturationPressurePa(toK);
    return new Estimate(
        Math.min(1, humidity.value() * factor), Math.min(0.5, humidity.standard() * factor));
  }

  /** Air pressure at the site. */
  static AbsolutePressure pressure(Rig rig) {
    return Atmosphere.standard(
        Math.max(LOWEST_ALTITUDE_M, Math.min(HIGHEST_ALTITUDE_M, rig.site().altitudeM())));
  }
}
