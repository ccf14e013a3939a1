package heatwake.analysis.rule;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
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

  /** Looks at the water from one instant up to another, first at the pool, then at the inlet. */
  public static HeatCall over(Evidence evidence, int from, int to) {
    Timeline timeline = evidence.timeline();
    OptionalDouble setpointK = evidence.recording().rig().pool().setpointK();
    if (setpointK.isEmpty()) {
      return NOT_KNOWN;
    }
    for (Channel channel : List.of(Channel.WATER_POOL, Channel.WATER_IN)) {
      double waterK = Stretch.mean(timeline.of(channel), from, to);
      if (!Double.isNaN(waterK)) {
        return new HeatCall(
            OptionalDouble.of(setpointK.getAsDouble() - waterK),
            ProbeUncertainty.of(evidence.recording().rig(), channel).atTemperatureK(waterK));
      }
    }
    return NOT_KNOWN;
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
