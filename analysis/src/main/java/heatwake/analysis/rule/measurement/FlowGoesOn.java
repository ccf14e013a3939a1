package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** A flow that reads on without a change while the other probes of the water say that it stands. */
final class FlowGoesOn {
  /** Water and paddles have come to rest after a pump's stop in this time; ours, s. */
  private static final double STANDS_S = 180;

  /** One probe of the water may be wrong itself; ours. */
  private static final int WITNESSES = 2;

  private FlowGoesOn() {}

  /** Which probes say that the water stands for three minutes on end or more, if two do. */
  static Optional<String> witnesses(Timeline timeline, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (channel != Channel.FLOW_HEATER && channel != Channel.FLOW_TOTAL) {
      return Optional.empty();
    }
    int length = (int) Math.ceil(STANDS_S / timeline.stepS());
    int end = timeline.indexAt(frozen.toMs());
    for (int from = timeline.indexAt(frozen.fromMs()); from + length <= end; from += length) {
      Stretch stretch = new Stretch(from, from + length);
      List<Channel> standing = WaterMovement.standBeside(channel, timeline, stretch);
      if (standing.size() >= WITNESSES) {
        return Optional.of(
            standing.stream()
                .limit(WITNESSES)
                .map(Channel::id)
                .collect(Collectors.joining(" and ")));
      }
    }
    return Optional.empty();
  }
}
