package heatwake.analysis.flow;

import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.water.PoolWater;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The flow where no meter tells it: one constant of what the nameplate allows, with as much of that
 * range as the rise leaves open.
 *
 * @param byRise most that the rise leaves open, m3/s; empty where it says nothing
 */
record UnmeteredFlow(
    Timeline timeline, List<PhaseSpan> phases, Track waterMoves, OptionalDouble byRise) {
  /** Usual rise at the rating, 1.7 to 5 K about this; common practice. */
  private static final double USUAL_RISE_K = 2.5;

  private static final double USUAL_RISE_SHARE = 0.5;

  /** Between the least and the most that a nameplate allows; empty where it does not state both. */
  Optional<FlowBasis> byNameplate(Heater heater) {
    OptionalDouble least = heater.flowMinM3PerS();
    OptionalDouble most = heater.flowMaxM3PerS();
    return least.isEmpty() || most.isEmpty()
        ? Optional.empty()
        : Optional.of(
            assumed(
                least.getAsDouble(),
                most.getAsDouble(),
                "taken from the nameplate, between flow-min and flow-max"));
  }

  /** What warms by a usual rise at the rated heat; empty without a rating. */
  Optional<FlowBasis> byRating(Heater heater) {
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
