package heatwake.analysis.pool;

import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
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
  /** Heat per volume and kelvin of pool water about 27 Cel (IF97, 0.1 to 0.2 MPa). */
  private static final double HEAT_PER_M3_K = 4.166e6;

  /** How well a stated volume is known; ours. */
  private static final double VOLUME_SHARE = 0.03;

  /** A forecast beyond this is no forecast; ours. */
  private static final double FURTHEST_S = 30 * 86_400.0;

  /** Hears the pool. */
  public static PoolWitness of(Timeline timeline, Rig rig, Phases phases) {
    if (!timeline.has(Channel.WATER_POOL) && !timeline.has(Channel.WATER_IN)) {
      return new PoolWitness(
          PoolFigures.NONE, List.of("pool: no temperature of it; clip water-pool or water-in"));
    }
    PoolPace pace = PoolPace.of(timeline, phases.spans());
    Optional<Estimate> capacity = capacityJPerK(rig);
    Optional<Estimate> heating = pace.heatingKPerS();
    Optional<Estimate> resting = pace.restingKPerS();
    Optional<Double> first = pace.firstK();
    Optional<Double> last = pace.lastK();
    Optional<Estimate> gain =
        first.flatMap(
            from -> last.map(to -> new Estimate(to - from, Math.sqrt(2) * PoolPace.MIXING_K)));
    OptionalDouble setpoint = rig.pool().setpointK();
    PoolFigures figures =
        new PoolFigures(
            gain.flatMap(kelvin -> capacity.map(kelvin::times)),
            resting.flatMap(kPerS -> capacity.map(kPerS.times(-1)::times)),
            Optional.empty(),
            heating,
            last.map(value -> new Estimate(value, probeK(timeline, rig, value))),
            reachedMs(timeline, last, heating, setpoint),
            isUnreachable(last, heating, setpoint));
    return new PoolWitness(figures, missing(rig));
  }

  private static Optional<Estimate> capacityJPerK(Rig rig) {
    OptionalDouble volume = rig.pool().volumeM3();
    return volume.isPresent()
        ? Optional.of(
            new Estimate(
                volume.getAsDouble() * HEAT_PER_M3_K,
                VOLUME_SHARE * volume.getAsDouble() * HEAT_PER_M3_K))
        : Optional.empty();
  }

  private static double probeK(Timeline timeline, Rig rig, double readingK) {
    Channel channel = timeline.has(Channel.WATER_POOL) ? Channel.WATER_POOL : Channel.WATER_IN;
    return Math.hypot(
        ProbeUncertainty.of(rig, channel).atTemperatureK(readingK), PoolPace.MIXING_K);
  }

  private static OptionalLong reachedMs(
      Timeline timeline,
      Optional<Double> lastK,
      Optional<Estimate> heating,
      OptionalDouble setpointK) {
    if (lastK.isEmpty() || setpointK.isEmpty()) {
      return OptionalLong.empty();
    }
    long nowMs = timeline.timeMs(timeline.size() - 1);
    double wantedK = setpointK.getAsDouble() - lastK.get();
    if (wantedK <= 0) {
      return OptionalLong.of(nowMs);
    }
    if (heating.isEmpty() || heating.get().value() * FURTHEST_S < wantedK) {
      return OptionalLong.empty();
    }
    return OptionalLong.of(nowMs + Math.round(wantedK / heating.get().value() * 1e3));
  }

  /** Whether even the upper end of the pace is no warming to speak of. */
  private static boolean isUnreachable(
      Optional<Double> lastK, Optional<Estimate> heating, OptionalDouble setpointK) {
    return lastK.isPresent()
        && setpointK.isPresent()
        && lastK.get() < setpointK.getAsDouble()
        && heating.isPresent()
        && (heating.get().value() + heating.get().expanded()) * FURTHEST_S
            < setpointK.getAsDouble() - lastK.get();
  }

  private static List<String> missing(Rig rig) {
    List<String> missing = new ArrayList<>();
    if (rig.pool().volumeM3().isEmpty()) {
      missing.add("pool's own heat and loss: no volume in [pool]");
    }
    if (rig.pool().setpointK().isEmpty()) {
      missing.add("time until the pool is warm: no setpoint in [pool]");
    }
    return missing;
  }
}
