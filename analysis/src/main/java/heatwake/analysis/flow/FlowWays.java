package heatwake.analysis.flow;

import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Pair;
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

  /** Usual rise at the rating, 1.7 to 5 K about this; common practice. */
  private static final double USUAL_RISE_K = 2.5;

  private static final double USUAL_RISE_SHARE = 0.5;

  private final Timeline timeline;
  private final Rig rig;
  private final List<PhaseSpan> phases;
  private final Track waterMoves;
  private final OptionalDouble byRise;

  private FlowWays(Timeline timeline, Rig rig, List<PhaseSpan> phases, Optional<Pair> pair) {
    this.timeline = timeline;
    this.rig = rig;
    this.phases = phases;
    this.waterMoves = WaterMovement.of(timeline);
    this.byRise =
        pair.isPresent()
            ? FlowByRise.mostM3PerS(timeline, rig, phases, waterMoves, pair.get())
            : OptionalDouble.empty();
  }

  /**
   * The best basis, or empty if neither probes nor nameplate give any.
   *
   * @param pair {@code water-out} and {@code water-in}, whose rise bounds a flow that no meter
   *     tells
   */
  public static Optional<FlowBasis> best(
      Timeline timeline, Rig rig, List<PhaseSpan> phases, Optional<Pair> pair) {
    FlowWays ways = new FlowWays(timeline, rig, phases, pair);
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

  private Optional<FlowBasis> nameplate() {
    OptionalDouble least = rig.heater().flowMinM3PerS();
    OptionalDouble most = rig.heater().flowMaxM3PerS();
    return least.isEmpty() || most.isEmpty()
        ? Optional.empty()
        : Optional.of(
            assumed(
                least.getAsDouble(),
                most.getAsDouble(),
                "taken from the nameplate, between flow-min and flow-max"));
  }

  private Optional<FlowBasis> rating() {
    Heater heater = rig.heater();
    if (heater.ratings().isEmpty()) {
      return Optional.empty();
    }
    double flow =
        heater.ratings().get(0).heatW()
            / (PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K * USUAL_RISE_K);
    return Optional.of(
        assumed(
            flow * (1 - USUAL_RISE_SHARE),
            flow * (1 + USUAL_RISE_SHARE),
            "guessed from the rated heat and a usual rise of 2.5 K"));
  }

  /** A flow that no probe tells, with as much of its range as the rise leaves open. */
  private FlowBasis assumed(double leastM3PerS, double mostM3PerS, String way) {
    if (byRise.isEmpty() || byRise.getAsDouble() > mostM3PerS) {
      return constant(new FlowRange(leastM3PerS, mostM3PerS), way);
    }
    FlowRange range = FlowRange.within(leastM3PerS, byRise.getAsDouble());
    return constant(
        range,
        byRise.getAsDouble() < leastM3PerS
            ? "taken from the rise and half to all of the heat that the nameplate lets expect"
            : way + ", with no more heat than the nameplate lets expect");
  }

  private FlowBasis constant(FlowRange range, String way) {
    double[] flow = new double[timeline.size()];
    Arrays.fill(flow, Double.NaN);
    for (PhaseSpan span : phases) {
      if (span.phase() != Phase.UNKNOWN) {
        Arrays.fill(
            flow,
            timeline.firstAtOrAfter(span.startMs()),
            timeline.firstAtOrAfter(span.endMs()),
            span.phase() == Phase.OFF ? 0 : range.middleM3PerS());
      }
    }
    for (int i = 0; i < flow.length; i++) {
      // A pump that is off, or an open flow switch, says so of a running heater's water too.
      if (waterMoves.no(i)) {
        flow[i] = 0;
      }
    }
    return new FlowBasis(
        way,
        FlowKnowledge.ASSUMED,
        flow,
        new ProbeUncertainty(0, range.share(), false),
        Channel.WATER_OUT,
        Optional.empty());
  }
}
