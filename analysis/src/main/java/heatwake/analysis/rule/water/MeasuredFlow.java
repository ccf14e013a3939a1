package heatwake.analysis.rule.water;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a flow meter reads, held against the least flow of the heater, also while nothing runs. The
 * total flow tells too: no more than that goes through the heater.
 */
public final class MeasuredFlow {
  /** A shortfall of flow smaller than this part of the minimum is not worth a call-out; ours. */
  private static final double MATERIAL = 0.97;

  private final Evidence evidence;
  private final Channel channel;
  private final LeastFlow least;

  private MeasuredFlow(Evidence evidence, Channel channel, LeastFlow least) {
    this.evidence = evidence;
    this.channel = channel;
    this.least = least;
  }

  /** By the heater's own meter, else by that of all water; empty without a meter or a minimum. */
  public static Optional<MeasuredFlow> in(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    return List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL).stream()
        .filter(timeline::has)
        .findFirst()
        .flatMap(
            channel ->
                LeastFlow.of(evidence.recording().rig().heater())
                    .map(least -> new MeasuredFlow(evidence, channel, least)));
  }

  /** The readings on which the heater's flow rests in a run. */
  static Set<Channel> restsOn(Evidence evidence) {
    return evidence.timeline().has(Channel.FLOW_HEATER)
        ? Set.of(Channel.FLOW_HEATER)
        : Set.of(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER);
  }

  /** What is read. */
  Channel channel() {
    return channel;
  }

  LeastFlow least() {
    return least;
  }

  /** The readings on the grid of the timeline, m3/s. */
  double[] readings() {
    return evidence.timeline().of(channel);
  }

  /** Mean over a stretch with the uncertainty of the meter; NaN without readings. */
  Estimate over(Stretch stretch) {
    double mean = stretch.mean(readings());
    return new Estimate(
        mean, ProbeUncertainty.of(evidence.recording().rig(), channel).at(Math.abs(mean)));
  }

  /** Whether it is below the heater's minimum beyond doubt over a stretch. */
  public boolean isLow(Stretch stretch) {
    return isLow(over(stretch), least);
  }

  /** Below the minimum beyond doubt, and by enough to matter. */
  static boolean isLow(Estimate flow, LeastFlow least) {
    return Doubt.below(flow, least.flowM3PerS()) && flow.value() < MATERIAL * least.flowM3PerS();
  }
}
