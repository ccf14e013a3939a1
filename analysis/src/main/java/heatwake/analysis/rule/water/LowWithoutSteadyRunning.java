package heatwake.analysis.rule.water;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** A heater starved of water may trip before it runs steadily, or wait for flow all along. */
final class LowWithoutSteadyRunning {
  static final String LIMITS =
      "Where no run becomes steady and they last less than 5 min in all, the heater's own meter has"
          + " to read so in most of three runs or more (ours). ";

  /** So many runs that end before they are steady show no chance reading; ours. */
  private static final int SHORT_RUNS = 3;

  private final Evidence evidence;
  private final LeastFlow least;

  LowWithoutSteadyRunning(Evidence evidence, LeastFlow least) {
    this.evidence = evidence;
    this.least = least;
  }

  /** Whether the heater's flow was seen for long enough, in running or at rest, to judge it. */
  boolean canBeSeen() {
    return meanFlow().isPresent() || seenInShortRuns();
  }

  /** Over all running, or over all water moving where the compressor never ran. */
  Optional<LowFlow> find() {
    OptionalDouble flow = meanFlow();
    return flow.isPresent() ? throughout(flow.getAsDouble()) : inShortRuns();
  }

  private OptionalDouble meanFlow() {
    return evidence.cycles().isEmpty()
        ? WaterRunning.flowWhileCirculating(evidence)
        : WaterRunning.flowWhileCompressing(evidence);
  }

  private Optional<LowFlow> throughout(double flowM3PerS) {
    Estimate mean = new Estimate(flowM3PerS, WaterRunning.uncertainty(evidence, flowM3PerS));
    return MeasuredFlow.isLow(mean, least)
        ? Optional.of(
            new LowFlow(
                evidence.recording().startMs(),
                evidence.recording().endMs(),
                flowM3PerS,
                least.sentence(flowM3PerS) + "; the heater never came to steady running",
                MeasuredFlow.restsOn(evidence)))
        : Optional.empty();
  }

  private Optional<MeasuredFlow> ownMeter() {
    return MeasuredFlow.in(evidence).filter(one -> one.channel() == Channel.FLOW_HEATER);
  }

  private boolean seenInShortRuns() {
    return ownMeter().isPresent() && WaterRunning.runsInMovingWater(evidence).size() >= SHORT_RUNS;
  }

  /** Where a protection ends each run before the flow of one could be averaged. */
  private Optional<LowFlow> inShortRuns() {
    if (!seenInShortRuns()) {
      return Optional.empty();
    }
    MeasuredFlow flow = ownMeter().orElseThrow();
    List<Stretch> runs = WaterRunning.runsInMovingWater(evidence);
    List<Stretch> low = runs.stream().filter(flow::isLow).toList();
    if (2 * low.size() <= runs.size()) {
      return Optional.empty();
    }
    Timeline timeline = evidence.timeline();
    double mean = low.stream().mapToDouble(run -> flow.over(run).value()).average().orElseThrow();
    return Optional.of(
        new LowFlow(
            timeline.timeMs(low.get(0).from()),
            timeline.timeMs(low.get(low.size() - 1).to() - 1),
            mean,
            least.sentence(mean)
                + " in "
                + low.size()
                + " of "
                + runs.size()
                + " compressor runs, all too short to become steady",
            Set.of(Channel.FLOW_HEATER)));
  }
}
