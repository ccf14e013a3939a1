package heatwake.analysis.startup;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Whether the probes of a run can tell the flow through the heater: a meter in the heater's own
 * water, or all water and the temperature it mixes to.
 */
final class HeaterFlowProbes {
  private HeaterFlowProbes() {}

  /** What to clip so that the flow through the heater is measured; empty if it is. */
  static Optional<String> missing(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (timeline.has(Channel.FLOW_HEATER)) {
      return Optional.empty();
    }
    String toMix =
        Stream.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.WATER_RETURN)
            .filter(channel -> !timeline.has(channel))
            .map(Channel::id)
            .collect(Collectors.joining(" and "));
    if (allWaterIsKnown(evidence)) {
      return toMix.isEmpty()
          ? Optional.empty()
          : Optional.of(
              "the heater's part of all the water is not measured; clip "
                  + toMix
                  + ", or flow-heater");
    }
    return Optional.of(
        "no reading that gives the flow through the heater; clip flow-heater, or flow-total"
            + (toMix.isEmpty() ? "" : " and " + toMix));
  }

  private static boolean allWaterIsKnown(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    return timeline.has(Channel.FLOW_TOTAL)
        || (timeline.has(Channel.PRESSURE_FILTER)
            && !evidence.recording().rig().pumpCurve().isEmpty());
  }
}
