package heatwake.analysis.heat;

import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.flow.FlowWays;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Zeroing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the water's side of a run gives: zero of the pair, flow and heat.
 *
 * @param zero zero of {@code water-out} against {@code water-in}
 * @param flow what heat is computed from
 * @param heat heat at every instant
 * @param missing what could not be had and what would give it, one sentence each
 */
public record WaterSide(
    Optional<ProbeZero> zero,
    Optional<FlowBasis> flow,
    Optional<HeatStream> heat,
    List<String> missing) {

  /** Gauge pressure in the heater where none is measured: usual for a pool; common practice. */
  private static final double USUAL_GAUGE_PA = 70e3;

  /** Finds all that the probes allow. */
  public static WaterSide of(Timeline timeline, Rig rig, Phases phases) {
    List<String> missing = new ArrayList<>();
    Optional<ProbeZero> zero = zero(timeline, rig, phases, Channel.WATER_OUT);
    if (zero.isEmpty() && timeline.has(Channel.WATER_IN) && timeline.has(Channel.WATER_OUT)) {
      missing.add(Zeroing.whyNone(timeline));
    }
    Optional<FlowBasis> flow = FlowWays.best(timeline, rig, phases.spans());
    if (flow.isEmpty()) {
      missing.add(
          "flow: no probe and no nameplate tells it; clip flow-heater, or flow-total and"
              + " water-return, or state flow-min and flow-max in [heater]");
    }
    Optional<HeatStream> heat = Optional.empty();
    if (flow.isPresent()) {
      Channel hot = flow.get().hot();
      if (timeline.has(Channel.WATER_IN) && timeline.has(hot)) {
        Optional<ProbeZero> used =
            hot == Channel.WATER_OUT ? zero : zero(timeline, rig, phases, hot);
        heat =
            Optional.of(
                HeatStream.of(
                    timeline, flow.get(), Zeroing.pair(timeline, rig, hot, used), water(rig)));
      } else {
        missing.add("heat: water-in and water-out are needed; clip both to the heater's pipes");
      }
    }
    return new WaterSide(zero, flow, heat, missing);
  }

  private static Optional<ProbeZero> zero(Timeline timeline, Rig rig, Phases phases, Channel hot) {
    return Zeroing.of(timeline, rig, phases.spans(), phases.cycles(), hot);
  }

  private static PoolWater water(Rig rig) {
    double atmospherePa = 101325 * Math.pow(1 - 2.25577e-5 * rig.site().altitudeM(), 5.2559);
    return PoolWater.of(rig.pool().saltKgPerKg(), atmospherePa + USUAL_GAUGE_PA);
  }
}
