package heatwake.analysis.rule.water;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;

/**
 * A fall of the flow under the heater's minimum that stopped the heater and keeps it from starting:
 * its flow switch, or its own look at the water, locks it out.
 *
 * @param flow what the meter reads
 * @param rest from the stop until the compressor runs again, the flow is back or the run ends
 * @param beforeM3PerS flow while the heater still ran
 * @param afterM3PerS flow since
 * @param belowSetK how far the water is below the set temperature meanwhile, K
 */
record FlowLockout(
    MeasuredFlow flow, Stretch rest, double beforeM3PerS, double afterM3PerS, double belowSetK) {
  static final String LIMITS =
      "A heater that stops within a minute, or two readings, of a fall of the measured flow from its"
          + " minimum or more to less, and stays away for half an hour and more of such flow, is"
          + " locked out by it, if the water was more than 1 K below the set temperature when it"
          + " stopped (controls stop nearer to it; backwash takes minutes: common practice).";

  /** Stop and fall of the flow belong together within this time (ours), s. */
  private static final double TOGETHER_S = 60;

  private static final int TOGETHER_INTERVALS = 2;

  /** The flow before the fall is taken over so long; ours, s. */
  private static final double BEFORE_S = 300;

  /** Backwash and robots take minutes; common practice, s. */
  private static final double SHORTEST_S = 1800;

  /** A control that is satisfied stops nearer to the set temperature than this; ours, K. */
  private static final double SATISFIED_WITHIN_K = 1;

  /** The longest of a run. */
  static Optional<FlowLockout> longest(Evidence evidence) {
    return MeasuredFlow.in(evidence)
        .flatMap(
            flow ->
                evidence.cycles().stream()
                    .map(cycle -> after(cycle, flow, evidence))
                    .flatMap(Optional::stream)
                    .max(Comparator.comparingInt(one -> one.rest.length())));
  }

  private static Optional<FlowLockout> after(Cycle cycle, MeasuredFlow flow, Evidence evidence) {
    if (cycle.stopMs().isEmpty()) {
      return Optional.empty();
    }
    Timeline timeline = evidence.timeline();
    double[] read = flow.readings();
    int stop = timeline.firstAtOrAfter(cycle.stopMs().getAsLong());
    int together =
        Math.max(
            timeline.instants(TOGETHER_S),
            TOGETHER_INTERVALS * timeline.intervalInstants(flow.channel()));
    int started = timeline.firstAtOrAfter(cycle.startMs());
    Stretch before =
        new Stretch(
            Math.max(started, stop - together - timeline.instants(BEFORE_S)), stop - together);
    int until =
        cycle.nextStartMs().isPresent()
            ? timeline.firstAtOrAfter(cycle.nextStartMs().getAsLong())
            : timeline.size();
    Stretch rest = new Stretch(stop + together, lowUntil(flow, stop + together, until, together));
    if (before.length() < 1
        || rest.durationS(timeline) < SHORTEST_S
        || flow.isLow(before)
        || !(flow.over(before).value() >= flow.least().flowM3PerS())
        || !flow.isLow(rest)
        || !(flow.over(rest).value() > WaterMovement.LEAST_FLOW_M3_PER_S)
        || !fallsBetween(read, before, rest)) {
      return Optional.empty();
    }
    HeatCall atStop = HeatCall.over(evidence, before.from(), before.to());
    return atStop.isBelowSetBy(SATISFIED_WITHIN_K)
        ? Optional.of(
            new FlowLockout(
                flow,
                new Stretch(stop, rest.to()),
                flow.over(before).value(),
                flow.over(rest).value(),
                HeatCall.over(evidence, rest.from(), rest.to())
                    .belowSetK()
                    .orElse(atStop.belowSetK().orElseThrow())))
        : Optional.empty();
  }

  /**
   * The first instant from which the flow is back, or not known, for as long as a stop and its
   * cause may part.
   */
  private static int lowUntil(MeasuredFlow flow, int from, int until, int together) {
    double[] read = flow.readings();
    int back = 0;
    for (int i = from; i < until; i++) {
      back = read[i] < flow.least().flowM3PerS() ? 0 : back + 1;
      if (back >= together) {
        return i + 1 - back;
      }
    }
    return Math.max(from, until);
  }

  /** Whether the flow holds its level until just before the stop, and the lower one just after. */
  private static boolean fallsBetween(double[] read, Stretch before, Stretch rest) {
    double middle = (before.mean(read) + rest.mean(read)) / 2;
    double last = lastKnown(read, before);
    double first = firstKnown(read, rest);
    return last > middle && first < middle;
  }

  private static double lastKnown(double[] read, Stretch stretch) {
    int i = stretch.to() - 1;
    while (i > stretch.from() && Double.isNaN(read[i])) {
      i--;
    }
    return read[i];
  }

  private static double firstKnown(double[] read, Stretch stretch) {
    int i = stretch.from();
    while (i < stretch.to() - 1 && Double.isNaN(read[i])) {
      i++;
    }
    return read[i];
  }

  LowFlow found(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    return new LowFlow(
        timeline.timeMs(rest.from()),
        timeline.timeMs(rest.to() - 1),
        afterM3PerS,
        words(timeline),
        Set.of(flow.channel()));
  }

  private String words(Timeline timeline) {
    return "Flow fell from "
        + Wording.flow(beforeM3PerS)
        + " to "
        + Wording.flow(afterM3PerS)
        + " at "
        + Wording.moment(timeline.timeMs(rest.from()))
        + ", under "
        + flow.least().name()
        + ", and the heater stopped with it; it did not run for "
        + Wording.duration(rest.durationS(timeline))
        + " then, with the water "
        + Wording.kelvin(belowSetK)
        + " below the set temperature";
  }
}
