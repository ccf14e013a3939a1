package heatwake.analysis.rule;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether the pool calls for heat: how far its water is below the set temperature.
 *
 * @param belowSetK set temperature less water temperature, K; empty if either is not known
 * @param uncertaintyK standard uncertainty of the water temperature, K
 */
public record HeatCall(OptionalDouble belowSetK, double uncertaintyK) {
  /** Water this much below the set temperature calls for heat with any controller (ours). */
  private static final double CALLS_K = 0.5;

  private static final HeatCall NOT_KNOWN = new HeatCall(OptionalDouble.empty(), 0);

  /**
   * Looks at the water from one instant up to another, first at the pool, then at the inlet. Where
   * the pool's probe leaves a call open, a surer one in the inlet that calls bears it out.
   */
  public static HeatCall over(Evidence evidence, int from, int to) {
    if (evidence.recording().rig().pool().setpointK().isEmpty()) {
      return NOT_KNOWN;
    }
    Optional<HeatCall> pool = seenBy(Channel.WATER_POOL, evidence, from, to);
    Optional<HeatCall> inlet = seenBy(Channel.WATER_IN, evidence, from, to);
    if (pool.isEmpty()) {
      return inlet.orElse(NOT_KNOWN);
    }
    // A pool probe that calls, but not beyond its own doubt, is borne out by a surer one.
    return inlet.filter(one -> pool.get().isBorneOutBy(one)).orElseGet(pool::get);
  }

  private static Optional<HeatCall> seenBy(Channel channel, Evidence evidence, int from, int to) {
    double waterK = Stretch.mean(evidence.timeline().of(channel), from, to);
    if (Double.isNaN(waterK)) {
      return Optional.empty();
    }
    double setpointK = evidence.recording().rig().pool().setpointK().orElseThrow();
    return Optional.of(
        new HeatCall(
            OptionalDouble.of(setpointK - waterK),
            ProbeUncertainty.of(evidence.recording().rig(), channel).atTemperatureK(waterK)));
  }

  private boolean isBorneOutBy(HeatCall other) {
    return !calls()
        && belowSetK.isPresent()
        && belowSetK.getAsDouble() > CALLS_K
        && other.uncertaintyK < uncertaintyK
        && other.calls();
  }

  /** Beyond doubt. */
  public boolean calls() {
    return belowSetK.isPresent() && belowSetK.getAsDouble() > CALLS_K + Doubt.FACTOR * uncertaintyK;
  }

  /** Whether nothing speaks against it: it calls, or it cannot be told. */
  public boolean mayCall() {
    return belowSetK.isEmpty() || calls();
  }
}
