package heatwake.analysis.rule;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.uncertainty.Doubt;
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

  /** No thermostat calls at less below the set temperature; common practice: 0.3 to 2 K. */
  private static final double NO_CALL_K = 0.3;

  /** No probe is surer, whatever its rig states; ours. */
  private static final double SUREST_K = 1e-3;

  private static final HeatCall NOT_KNOWN = new HeatCall(OptionalDouble.empty(), 0);

  /**
   * Looks at the water from one instant up to another, by the pool's probe and the inlet's: two
   * that agree within their doubt tell more surely than each; else the pool's tells.
   */
  public static HeatCall over(Evidence evidence, int from, int to) {
    if (evidence.recording().rig().pool().setpointK().isEmpty()) {
      return NOT_KNOWN;
    }
    Optional<HeatCall> pool = seenBy(Channel.WATER_POOL, evidence, from, to);
    Optional<HeatCall> inlet = seenBy(Channel.WATER_IN, evidence, from, to);
    return pool.map(one -> inlet.filter(one::agreesWith).map(one::and).orElse(one))
        .or(() -> inlet)
        .orElse(NOT_KNOWN);
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

  private boolean agreesWith(HeatCall other) {
    double apartK = belowSetK.orElseThrow() - other.belowSetK.orElseThrow();
    return Math.abs(apartK) <= Doubt.FACTOR * Math.hypot(uncertaintyK, other.uncertaintyK);
  }

  /** The mean of both, weighted by their variances. */
  private HeatCall and(HeatCall other) {
    double mine = weight();
    double others = other.weight();
    double belowK =
        (mine * belowSetK.orElseThrow() + others * other.belowSetK.orElseThrow()) / (mine + others);
    return new HeatCall(OptionalDouble.of(belowK), Math.sqrt(1 / (mine + others)));
  }

  private double weight() {
    double standardK = Math.max(SUREST_K, uncertaintyK);
    return 1 / (standardK * standardK);
  }

  /** Beyond doubt. */
  public boolean calls() {
    return isBelowSetBy(CALLS_K);
  }

  /** Whether the water is known to be colder than the set temperature by more than this, K. */
  public boolean isBelowSetBy(double kelvin) {
    return belowSetK.isPresent() && belowSetK.getAsDouble() > kelvin + Doubt.FACTOR * uncertaintyK;
  }

  /** Whether the water is likelier so cold that a thermostat may call than not. */
  public boolean isLikely() {
    return belowSetK.isPresent() && belowSetK.getAsDouble() > NO_CALL_K;
  }

  /** Whether the water is likelier too warm for any thermostat to call than not. */
  public boolean isUnlikely() {
    return belowSetK.isPresent() && belowSetK.getAsDouble() < NO_CALL_K;
  }

  /** Whether nothing speaks against it: it calls, or it cannot be told. */
  public boolean mayCall() {
    return belowSetK.isEmpty() || calls();
  }
}
