package heatwake.analysis.pool;

import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.water.Salt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * The pool as a second witness of the heat: what it gained, what it loses at rest, when it will be
 * warm.
 *
 * @param figures the figures
 * @param missing what could not be had and what would give it, one sentence each
 */
public record PoolWitness(PoolFigures figures, List<String> missing) {
  /** Where no reading tells the pool's temperature, its heat capacity is taken at this; ours. */
  private static final double USUAL_POOL_K = 300.15;

  /**
   * By how much the loss grows per area and kelvin where the weather is not known: between still
   * and windy nights by {@link SurfaceLoss}; ASHRAE's rule of thumb for the whole loss is 60 (from
   * memory).
   */
  private static final Estimate USUAL_SLOPE_W_PER_M2_K = new Estimate(40, 15);

  /** How well a stated volume is known; ours. */
  private static final double VOLUME_SHARE = 0.03;

  /** How well the growth of the loss is known from the weather of a run; ours. */
  private static final double SLOPE_SHARE = 0.25;

  /** A forecast beyond this is no forecast; ours. */
  private static final double FURTHEST_S = 30 * 86_400.0;

  /**
   * Hears the pool.
   *
   * @param water the water's side, which tells whether {@code water-in} is known to be the inlet
   */
  public static PoolWitness of(Timeline timeline, Rig rig, Phases phases, WaterSide water) {
    if (!timeline.has(Channel.WATER_POOL) && !timeline.has(Channel.WATER_IN)) {
      return new PoolWitness(
          PoolFigures.NONE, List.of("pool: no temperature of it; clip water-pool or water-in"));
    }
    if (!timeline.has(Channel.WATER_POOL) && water.seemsToCool()) {
      return new PoolWitness(
          PoolFigures.NONE,
          List.of(
              "pool: water-in may sit on the heater's outlet, so nothing is said of the pool; clip"
                  + " water-pool, or see which of the two is the inlet"));
    }
    PoolPace pace = PoolPace.of(timeline, phases.spans());
    Optional<Estimate> heating = pace.heatingKPerS();
    Optional<Estimate> resting = pace.restingKPerS();
    Optional<Double> first = pace.firstK();
    Optional<Double> last = pace.lastK();
    Optional<Estimate> capacity = capacityJPerK(rig, last.orElse(USUAL_POOL_K));
    Optional<Estimate> poolK = last.map(value -> new Estimate(value, probeK(timeline, rig, value)));
    Optional<SurfaceLoss> loss = poolK.flatMap(estimate -> WeatherLoss.of(timeline, rig, estimate));
    Optional<HeatUp> heatUp = heatUp(rig, capacity, heating, loss);
    Optional<Estimate> gain =
        first.flatMap(
            from -> last.map(to -> new Estimate(to - from, Math.sqrt(2) * PoolPace.MIXING_K)));
    OptionalDouble setpoint = rig.pool().setpointK();
    PoolFigures figures =
        new PoolFigures(
            gain.flatMap(kelvin -> capacity.map(kelvin::times)),
            resting.flatMap(kPerS -> capacity.map(kPerS.times(-1)::times)),
            loss.map(SurfaceLoss::totalW),
            heating,
            poolK,
            pace.lastMs(),
            reachedMs(timeline, last, heatUp, setpoint),
            isUnreachable(last, heatUp, setpoint));
    return new PoolWitness(figures, missing(timeline, rig));
  }

  private static Optional<Estimate> capacityJPerK(Rig rig, double poolK) {
    OptionalDouble volume = rig.pool().volumeM3();
    if (volume.isEmpty() || !PoolWater.covers(poolK)) {
      return Optional.empty();
    }
    double m3 = volume.getAsDouble();
    PoolWater water =
        PoolWater.of(
            Math.min(rig.pool().saltKgPerKg(), Salt.HIGHEST_KG_PER_KG),
            AbsolutePressure.STANDARD_ATMOSPHERE.pa());
    return Optional.of(
        new PoolBody(new Estimate(m3, VOLUME_SHARE * m3), water).capacityJPerK(poolK));
  }

  /**
   * How the pool will warm: the pace seen, slowed as the loss grows. Without a volume the pool is
   * counted per joule of capacity and its loss taken as constant.
   */
  private static Optional<HeatUp> heatUp(
      Rig rig,
      Optional<Estimate> capacity,
      Optional<Estimate> heating,
      Optional<SurfaceLoss> loss) {
    if (heating.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble surface = rig.pool().surfaceM2();
    if (capacity.isEmpty() || surface.isEmpty()) {
      return Optional.of(new HeatUp(Estimate.exact(1), heating.get(), Estimate.exact(0)));
    }
    double joulePerK = capacity.get().value();
    Estimate slope =
        loss.map(one -> new Estimate(one.slopeWPerK(), SLOPE_SHARE * one.slopeWPerK()))
            .orElse(USUAL_SLOPE_W_PER_M2_K.times(surface.getAsDouble()));
    // The pace was seen, so the volume's uncertainty reaches the time only through the slope.
    return Optional.of(
        new HeatUp(Estimate.exact(joulePerK), heating.get().times(joulePerK), slope));
  }

  private static double probeK(Timeline timeline, Rig rig, double readingK) {
    Channel channel = timeline.preferred(Channel.WATER_POOL, Channel.WATER_IN);
    return Math.hypot(
        ProbeUncertainty.of(rig, channel).atTemperatureK(readingK), PoolPace.MIXING_K);
  }

  private static OptionalLong reachedMs(
      Timeline timeline,
      Optional<Double> lastK,
      Optional<HeatUp> heatUp,
      OptionalDouble setpointK) {
    if (lastK.isEmpty() || setpointK.isEmpty()) {
      return OptionalLong.empty();
    }
    long nowMs = timeline.timeMs(timeline.size() - 1);
    double wantedK = setpointK.getAsDouble() - lastK.get();
    if (wantedK <= 0) {
      return OptionalLong.of(nowMs);
    }
    if (heatUp.isPresent()
        && heatUp.get().to(wantedK) instanceof HeatUp.Answer.Reached reached
        && reached.seconds() < FURTHEST_S) {
      return OptionalLong.of(nowMs + Math.round(reached.seconds() * 1e3));
    }
    return OptionalLong.empty();
  }

  /** Whether even the earliest end of the forecast lies beyond all patience. */
  private static boolean isUnreachable(
      Optional<Double> lastK, Optional<HeatUp> heatUp, OptionalDouble setpointK) {
    if (lastK.isEmpty() || setpointK.isEmpty() || heatUp.isEmpty()) {
      return false;
    }
    double wantedK = setpointK.getAsDouble() - lastK.get();
    return wantedK > 0 && heatUp.get().atBest().seconds(wantedK) > FURTHEST_S;
  }

  private static List<String> missing(Timeline timeline, Rig rig) {
    List<String> missing = new ArrayList<>();
    if (rig.pool().volumeM3().isEmpty()) {
      missing.add("pool's own heat and loss: no volume in [pool]");
    }
    if (rig.pool().setpointK().isEmpty()) {
      missing.add("time until the pool is warm: no setpoint in [pool]");
    }
    List<String> forLoss = WeatherLoss.missing(timeline, rig);
    if (!forLoss.isEmpty()) {
      missing.add("pool loss from the weather: no " + String.join(", no ", forLoss));
    }
    return missing;
  }
}
