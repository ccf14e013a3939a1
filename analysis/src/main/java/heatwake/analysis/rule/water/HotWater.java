package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Water that stands in a heater whose compressor runs: it warms by tens of kelvins, where water
 * that flows is warmed by a few. Looked for where the heater has no flow meter.
 *
 * @param times while the compressor ran so, in order
 * @param greatestK the greatest rise over the entering water
 */
record HotWater(List<Stretch> times, double greatestK) {
  /** Pool heaters warm their water by 2 to 3 K, by 6 K at the most (common practice), K. */
  private static final double LEAST_K = 20;

  /** So many times the rise at the heater's least flow; ours. */
  private static final double TIMES_LEAST_FLOW = 3;

  /** It has warmed by this much within the time below, as no drifting probe does; ours. */
  private static final double CLIMB_K = 10;

  private static final double CLIMBS_WITHIN_S = 600;

  /** No flicker of a reading lasts so long, s; ours. */
  private static final double LASTS_S = 30;

  /** A slipped probe reads the air, which may be hot too; ours, K. */
  private static final double ABOVE_AIR_K = 5;

  /** Water is not hotter than what warms it, but for the probes' lags; ours, K. */
  private static final double OVER_CONDENSING_K = 5;

  HotWater {
    times = List.copyOf(times);
  }

  /** Whether it can be seen, and nothing knows better. */
  static boolean canBeSeen(Timeline timeline) {
    return timeline.has(Channel.WATER_IN)
        && timeline.has(Channel.WATER_OUT)
        && !timeline.has(Channel.FLOW_HEATER);
  }

  static Optional<HotWater> of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!canBeSeen(timeline)) {
      return Optional.empty();
    }
    double limitK = limitK(evidence);
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    PhaseGrid phases = evidence.phaseGrid();
    int longEnough =
        Math.max(timeline.instants(LASTS_S), 1 + timeline.intervalInstants(Channel.WATER_OUT));
    List<Stretch> times =
        Stretch.where(phases.size(), i -> phases.compressorRuns(i) && out[i] - in[i] > limitK)
            .stream()
            .filter(one -> one.length() >= longEnough)
            .filter(one -> climbs(timeline, out, one) && isWarmedByTheHeater(evidence, one))
            .toList();
    return times.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new HotWater(
                times,
                times.stream()
                    .flatMapToInt(one -> IntStream.range(one.from(), one.to()))
                    .mapToDouble(i -> out[i] - in[i])
                    .max()
                    .orElseThrow()));
  }

  private static double limitK(Evidence evidence) {
    Heater heater = evidence.recording().rig().heater();
    double ratedW = heater.greatestRatedHeatW().orElse(0);
    return Math.max(
        LEAST_K,
        LeastFlow.of(heater)
            .map(least -> TIMES_LEAST_FLOW * least.rise(Estimate.exact(ratedW)).value())
            .orElse(0.0));
  }

  private static boolean climbs(Timeline timeline, double[] out, Stretch hot) {
    int from = Math.max(0, hot.from() - timeline.instants(CLIMBS_WITHIN_S));
    double coldest =
        Arrays.stream(out, from, hot.from() + 1).filter(k -> !Double.isNaN(k)).min().orElse(0);
    double hottest =
        Arrays.stream(out, hot.from(), hot.to()).filter(k -> !Double.isNaN(k)).max().orElse(0);
    return hottest - coldest > CLIMB_K;
  }

  private static boolean isWarmedByTheHeater(Evidence evidence, Stretch hot) {
    Timeline timeline = evidence.timeline();
    double outK = hot.mean(timeline.of(Channel.WATER_OUT));
    for (Channel air : List.of(Channel.AIR_IN, Channel.AIR_AMBIENT)) {
      if (hot.mean(timeline.of(air)) + ABOVE_AIR_K > outK) {
        return false;
      }
    }
    return evidence
        .trace(Trace.Kind.CONDENSING)
        .map(hot::mean)
        .filter(condensingK -> condensingK + OVER_CONDENSING_K < outK)
        .isEmpty();
  }

  Flag flag(String rule, Timeline timeline) {
    double longestS = times.stream().mapToDouble(one -> one.durationS(timeline)).max().orElse(0);
    return new Flag(
        rule,
        Side.WATER,
        Severity.ALARM,
        timeline.timeMs(times.get(0).from()),
        timeline.timeMs(times.get(times.size() - 1).to() - 1),
        "Water stood in the heater while its compressor ran: water-out rose to "
            + Wording.kelvin(greatestK)
            + " above water-in, for "
            + Wording.duration(longestS)
            + (times.size() == 1 ? "" : " (" + times.size() + " times, longest given)")
            + "; flowing water is warmed by a few kelvins",
        List.of(
            "flow switch stuck closed, bridged or set too low: it let the heater run",
            "pump stopped or lost its prime",
            "valve at the heater closed, or bypass fully open"),
        NoFlow.SEE_PUMP_AND_VALVES,
        Set.of(Channel.WATER_IN, Channel.WATER_OUT));
  }
}
