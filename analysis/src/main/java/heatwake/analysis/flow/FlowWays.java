package heatwake.analysis.flow;

import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.phase.HotStandingWater;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.zero.Pair;
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

  private final Timeline timeline;
  private final Rig rig;
  private final OptionalDouble byRise;

  private FlowWays(Timeline timeline, Rig rig, OptionalDouble byRise) {
    this.timeline = timeline;
    this.rig = rig;
    this.byRise = byRise;
  }

  /**
   * The best basis, or empty if neither probes nor nameplate give any.
   *
   * @param pair {@code water-out} and {@code water-in}, whose rise bounds a flow that no meter
   *     tells
   */
  public static Optional<FlowBasis> best(
      Timeline timeline, Rig rig, List<PhaseSpan> phases, Optional<Pair> pair) {
    Track waterMoves = HotStandingWater.with(WaterMovement.of(timeline), timeline);
    OptionalDouble byRise =
        pair.isPresent()
            ? FlowByRise.mostM3PerS(timeline, rig, phases, waterMoves, pair.get())
            : OptionalDouble.empty();
    FlowWays ways = new FlowWays(timeline, rig, byRise);
    UnmeteredFlow unmetered = new UnmeteredFlow(timeline, phases, waterMoves, byRise);
    return ways.measured()
        .or(ways::totalWithBalance)
        .or(ways::pumpCurveWithBalance)
        .or(ways::totalAlone)
        .or(ways::pumpCurveAlone)
        .or(() -> unmetered.byNameplate(rig.heater()))
        .or(() -> unmetered.byRating(rig.heater()));
  }

  private Optional<FlowBasis> measured() {
    if (!timeline.has(Channel.FLOW_HEATER) || !timeline.has(Channel.WATER_OUT)) {
      return Optional.empty();
    }
    return Optional.of(
        new FlowBasis(
            "measured by flow-heater",
            FlowKnowledge.MEASURED,
            timeline.of(Channel.FLOW_HEATER),
            ProbeUncertainty.of(rig, Channel.FLOW_HEATER),
            Channel.WATER_OUT,
            Optional.of(Channel.FLOW_HEATER)));
  }

  private Optional<FlowBasis> totalWithBalance() {
    if (!timeline.has(Channel.FLOW_TOTAL) || !timeline.has(Channel.WATER_RETURN)) {
      return Optional.empty();
    }
    return Optional.of(
        new FlowBasis(
            "flow-total times the heater's share by the mixing balance at water-return",
            FlowKnowledge.MEASURED,
            timeline.of(Channel.FLOW_TOTAL),
            ProbeUncertainty.of(rig, Channel.FLOW_TOTAL),
            Channel.WATER_RETURN,
            Optional.of(Channel.FLOW_TOTAL)));
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
                    FlowKnowledge.MEASURED,
                    pump.flowM3PerS(),
                    pump.uncertainty(),
                    Channel.WATER_RETURN,
                    Optional.of(Channel.PRESSURE_FILTER)));
  }

  private Optional<FlowBasis> totalAlone() {
    if (!timeline.has(Channel.FLOW_TOTAL)) {
      return Optional.empty();
    }
    return Optional.of(
        partOf(
            Channel.FLOW_TOTAL,
            timeline.of(Channel.FLOW_TOTAL),
            ProbeUncertainty.of(rig, Channel.FLOW_TOTAL),
            "a likely part of flow-total, the bypass not measured"));
  }

  private Optional<FlowBasis> pumpCurveAlone() {
    return PumpFlow.of(timeline, rig)
        .map(
            pump ->
                partOf(
                    Channel.PRESSURE_FILTER,
                    pump.flowM3PerS(),
                    pump.uncertainty(),
                    "a likely part of the flow by filter pressure and pump curve, the bypass not"
                        + " measured"));
  }

  /**
   * Nobody says whether there is a bypass, so all of it may go through the heater: the heater gets
   * at most all of it and no more than its heat explains, and at least {@link #LEAST_SHARE}. What
   * the nameplate allows at most is no bound: a pump without a bypass may give more.
   */
  private FlowBasis partOf(
      Channel meter, double[] total, ProbeUncertainty uncertainty, String way) {
    double least = rig.heater().flowMinM3PerS().orElse(0);
    double most = byRise.orElse(Double.POSITIVE_INFINITY);
    double[] flow = new double[total.length];
    double widest = 0;
    for (int i = 0; i < flow.length; i++) {
      double high = Math.min(total[i], most);
      double low = Math.max(Math.min(high, LEAST_SHARE * total[i]), FlowRange.low(least, high));
      FlowRange range = new FlowRange(low, high);
      flow[i] = range.middleM3PerS();
      widest = Math.max(widest, range.share());
    }
    return new FlowBasis(
        way,
        FlowKnowledge.PART_OF_TOTAL,
        flow,
        new ProbeUncertainty(
            uncertainty.absolute(), Math.hypot(uncertainty.share(), widest), uncertainty.stated()),
        Channel.WATER_OUT,
        Optional.of(meter));
  }
}
