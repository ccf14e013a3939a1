package heatwake.analysis.flow;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Chooses the best way to the flow that the probes allow: measured; total flow with the mixing
 * balance at the return; filter pressure on the pump curve with that balance; total flow without
 * the balance; else the nameplate.
 */
public final class FlowWays {
  /** Least share of the total flow that goes through a heater of unknown bypass; ours. */
  private static final double LEAST_SHARE = 0.3;

  /** Heat per volume and kelvin of pool water, near enough for a guess of the flow. */
  private static final double HEAT_COEFFICIENT_J_PER_M3_K = 4.16e6;

  /** Usual rise at the rating, 1.5 to 5 K about this; common practice. */
  private static final double USUAL_RISE_K = 2.5;

  private static final double USUAL_RISE_SHARE = 0.3;
  private static final double ROOT_OF_THREE = Math.sqrt(3);

  private final Timeline timeline;
  private final Rig rig;
  private final List<PhaseSpan> phases;

  private FlowWays(Timeline timeline, Rig rig, List<PhaseSpan> phases) {
    this.timeline = timeline;
    this.rig = rig;
    this.phases = phases;
  }

  /** The best basis, or empty if neither probes nor nameplate give any. */
  public static Optional<FlowBasis> best(Timeline timeline, Rig rig, List<PhaseSpan> phases) {
    FlowWays ways = new FlowWays(timeline, rig, phases);
    return ways.measured()
        .or(ways::totalWithBalance)
        .or(ways::pumpCurveWithBalance)
        .or(ways::totalAlone)
        .or(ways::pumpCurveAlone)
        .or(ways::nameplate)
        .or(ways::rating);
  }

  private Optional<FlowBasis> measured() {
    if (!timeline.has(Channel.FLOW_HEATER) || !timeline.has(Channel.WATER_OUT)) {
      return Optional.empty();
    }
    return Optional.of(
        new FlowBasis(
            "measured by flow-heater",
            timeline.of(Channel.FLOW_HEATER),
            ProbeUncertainty.of(rig, Channel.FLOW_HEATER),
            Channel.WATER_OUT));
  }

  private Optional<FlowBasis> totalWithBalance() {
    if (!timeline.has(Channel.FLOW_TOTAL) || !timeline.has(Channel.WATER_RETURN)) {
      return Optional.empty();
    }
    return Optional.of(
        new FlowBasis(
            "flow-total times the heater's share by the mixing balance at water-return",
            timeline.of(Channel.FLOW_TOTAL),
            ProbeUncertainty.of(rig, Channel.FLOW_TOTAL),
            Channel.WATER_RETURN));
  }

  private Optional<FlowBasis> pumpCurveWithBalance() {
    if (!timeline.has(Channel.WATER_RETURN)) {
      return Optional.empty();
    }
    return PumpFlow.of(timeline, rig)
        .map(
            pump ->
                new FlowBasis(
                    "filter pressure on the pump curve, times the heater's share by the mixing"
                        + " balance at water-return",
                    pump.flowM3PerS(),
                    pump.uncertainty(),
                    Channel.WATER_RETURN));
  }

  private Optional<FlowBasis> totalAlone() {
    if (!timeline.has(Channel.FLOW_TOTAL)) {
      return Optional.empty();
    }
    return Optional.of(
        partOf(
            timeline.of(Channel.FLOW_TOTAL),
            ProbeUncertainty.of(rig, Channel.FLOW_TOTAL),
            "a likely part of flow-total, the bypass not measured"));
  }

  private Optional<FlowBasis> pumpCurveAlone() {
    return PumpFlow.of(timeline, rig)
        .map(
            pump ->
                partOf(
                    pump.flowM3PerS(),
                    pump.uncertainty(),
                    "a likely part of the flow by filter pressure and pump curve, the bypass not"
                        + " measured"));
  }

  /** The heater gets at most all, at least {@link #LEAST_SHARE}, within its nameplate's limits. */
  private FlowBasis partOf(double[] total, ProbeUncertainty uncertainty, String way) {
    double least = rig.heater().flowMinM3PerS().orElse(0);
    double most = rig.heater().flowMaxM3PerS().orElse(Double.POSITIVE_INFINITY);
    double[] flow = new double[total.length];
    double widest = 0;
    for (int i = 0; i < flow.length; i++) {
      double high = Math.min(total[i], most);
      double low = Math.min(high, Math.max(LEAST_SHARE * total[i], least));
      flow[i] = (high + low) / 2;
      if (high > 0) {
        widest = Math.max(widest, (high - low) / (high + low) / ROOT_OF_THREE);
      }
    }
    return new FlowBasis(
        way,
        flow,
        new ProbeUncertainty(
            uncertainty.absolute(), Math.hypot(uncertainty.share(), widest), uncertainty.stated()),
        Channel.WATER_OUT);
  }

  private Optional<FlowBasis> nameplate() {
    OptionalDouble least = rig.heater().flowMinM3PerS();
    OptionalDouble most = rig.heater().flowMaxM3PerS();
    if (least.isEmpty() || most.isEmpty()) {
      return Optional.empty();
    }
    double low = least.getAsDouble();
    double high = most.getAsDouble();
    return Optional.of(
        constant(
            (low + high) / 2,
            (high - low) / (high + low) / ROOT_OF_THREE,
            "taken from the nameplate, between flow-min and flow-max"));
  }

  private Optional<FlowBasis> rating() {
    Heater heater = rig.heater();
    if (heater.ratings().isEmpty()) {
      return Optional.empty();
    }
    double flow = heater.ratings().get(0).heatW() / (HEAT_COEFFICIENT_J_PER_M3_K * USUAL_RISE_K);
    return Optional.of(
        constant(flow, USUAL_RISE_SHARE, "guessed from the rated heat and a usual rise of 2.5 K"));
  }

  private FlowBasis constant(double flowM3PerS, double share, String way) {
    double[] flow = new double[timeline.size()];
    Arrays.fill(flow, Double.NaN);
    for (PhaseSpan span : phases) {
      if (span.phase() != Phase.UNKNOWN) {
        Arrays.fill(
            flow,
            timeline.firstAtOrAfter(span.startMs()),
            timeline.firstAtOrAfter(span.endMs()),
            span.phase() == Phase.OFF ? 0 : flowM3PerS);
      }
    }
    return new FlowBasis(way, flow, new ProbeUncertainty(0, share, false), Channel.WATER_OUT);
  }
}
