package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** The heater's flow outside steady running. */
final class WaterRunning {
  /** Flow needs this long to settle after the water starts or the compressor does; ours. */
  private static final long SETTLING_MS = 60_000;

  /** Less time than this is no ground for a mean; ours. */
  private static final double SHORTEST_S = 300;

  /** Relative standard uncertainty of a flow that is not measured in the heater's pipe; ours. */
  private static final double DERIVED_SHARE = 0.1;

  private WaterRunning() {}

  static OptionalDouble flowWhileCompressing(Evidence evidence) {
    return mean(evidence, Phase::compressorRuns);
  }

  static OptionalDouble flowWhileCirculating(Evidence evidence) {
    return mean(evidence, phase -> phase == Phase.CIRCULATING || phase == Phase.FAN);
  }

  static double uncertainty(Evidence evidence, double flowM3PerS) {
    return evidence.timeline().has(Channel.FLOW_HEATER)
        ? ProbeUncertainty.of(evidence.recording().rig(), Channel.FLOW_HEATER).at(flowM3PerS)
        : DERIVED_SHARE * flowM3PerS;
  }

  /** The heater's flow at every instant of the timeline, NaN where unknown. */
  static double[] flow(Evidence evidence) {
    return evidence
        .trace(Trace.Kind.HEATER_FLOW)
        .orElseGet(() -> evidence.timeline().of(Channel.FLOW_HEATER));
  }

  /** Compressor runs during which, and for a minute before, water is not known to stand. */
  static List<Stretch> runsInMovingWater(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    int settling = (int) (SETTLING_MS / timeline.stepMs());
    return Stretch.where(phases.size(), phases::compressorRuns).stream()
        .filter(run -> run.from() >= settling)
        .filter(run -> IntStream.range(run.from() - settling, run.to()).noneMatch(moves::no))
        .toList();
  }

  private static OptionalDouble mean(Evidence evidence, Predicate<Phase> wanted) {
    Timeline timeline = evidence.timeline();
    double[] flow = flow(evidence);
    double sum = 0;
    int count = 0;
    for (PhaseSpan span : evidence.phases()) {
      if (wanted.test(span.phase())) {
        int from = timeline.firstAtOrAfter(span.startMs() + SETTLING_MS);
        int to = Math.min(flow.length, timeline.firstAtOrAfter(span.endMs()));
        if (from < to) {
          double[] known =
              Arrays.stream(flow, from, to).filter(value -> !Double.isNaN(value)).toArray();
          sum += Arrays.stream(known).sum();
          count += known.length;
        }
      }
    }
    return count * timeline.stepS() < SHORTEST_S
        ? OptionalDouble.empty()
        : OptionalDouble.of(sum / count);
  }
}
