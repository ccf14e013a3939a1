package heatwake.analysis.rule.water;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * The heater's own meter under the minimum while the compressor runs, steadily or not: the
 * nameplate asks for the water, not for a steady temperature of it.
 *
 * @param flow what the meter reads
 * @param stretch the longest such time
 */
record LowWhileRunning(MeasuredFlow flow, Stretch stretch) {
  static final String LIMITS =
      "The heater's own meter tells it without steady running too, where it stays so for 10 min and"
          + " more with the compressor on (backwash and valves that turn take minutes: common"
          + " practice). ";

  /** Valves that turn and pumps that change speed take minutes; common practice, s. */
  private static final double SHORTEST_S = 600;

  /** Single readings above the minimum are noise of the meter, s; ours. */
  private static final double BRIDGED_S = 60;

  /** The longest of a run. */
  static Optional<LowWhileRunning> longest(Evidence evidence) {
    return MeasuredFlow.in(evidence)
        .filter(flow -> flow.channel() == Channel.FLOW_HEATER)
        .flatMap(flow -> longest(evidence, flow));
  }

  private static Optional<LowWhileRunning> longest(Evidence evidence, MeasuredFlow flow) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    double[] read = flow.readings();
    double least = flow.least().flowM3PerS();
    IntPredicate runs =
        i -> phases.compressorRuns(i) && !phases.is(i, Phase.DEFROST) && !moves.no(i);
    return Stretch.bridged(
            read.length,
            i -> runs.test(i) && read[i] < least,
            timeline.instants(BRIDGED_S),
            runs.negate())
        .stream()
        .filter(one -> one.durationS(timeline) >= SHORTEST_S && flow.isLow(one))
        .max(Comparator.comparingInt(Stretch::length))
        .map(one -> new LowWhileRunning(flow, one));
  }

  LowFlow found(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    double mean = flow.over(stretch).value();
    return new LowFlow(
        timeline.timeMs(stretch.from()),
        timeline.timeMs(stretch.to() - 1),
        mean,
        flow.least().sentence(mean)
            + " for "
            + Wording.duration(stretch.durationS(timeline))
            + " with the compressor on",
        Set.of(flow.channel()));
  }
}
