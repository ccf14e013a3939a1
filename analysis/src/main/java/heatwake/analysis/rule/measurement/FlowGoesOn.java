package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.FrozenFlow;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.stream.Collectors;

/** A flow that reads on without a change while other probes say that the water came to stand. */
final class FlowGoesOn {
  /** So many are named. */
  private static final int NAMED = 2;

  private FlowGoesOn() {}

  /** Which probes say that the water came to stand for three minutes or more, if two do. */
  static Optional<String> witnesses(Timeline timeline, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (channel != Channel.FLOW_HEATER && channel != Channel.FLOW_TOTAL) {
      return Optional.empty();
    }
    Stretch stretch =
        new Stretch(timeline.indexAt(frozen.fromMs()), timeline.indexAt(frozen.toMs()) + 1);
    String witnesses =
        FrozenFlow.witnesses(channel, timeline, stretch).stream()
            .limit(NAMED)
            .map(Channel::id)
            .collect(Collectors.joining(" and "));
    return witnesses.isEmpty() ? Optional.empty() : Optional.of(witnesses);
  }
}
