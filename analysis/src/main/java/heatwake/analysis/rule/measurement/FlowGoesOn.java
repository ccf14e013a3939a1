package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A flow that reads on without a change while the other probes of the water say that it came to
 * stand. They must have seen it move under the same reading before: a pump on a slow speed may let
 * a flow switch open and a filter gauge fall to nothing, but its flow reads less than before.
 */
final class FlowGoesOn {
  /** Water and paddles have come to rest after a pump's stop in this time; ours, s. */
  private static final double STANDS_S = 180;

  /** One probe of the water may be wrong itself; ours. */
  private static final int WITNESSES = 2;

  private FlowGoesOn() {}

  /** Which probes say that the water came to stand for three minutes or more, if two do. */
  static Optional<String> witnesses(Timeline timeline, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (channel != Channel.FLOW_HEATER && channel != Channel.FLOW_TOTAL) {
      return Optional.empty();
    }
    Map<Channel, Track> beside = WaterMovement.beside(channel, timeline);
    Set<Channel> sawItMove = EnumSet.noneOf(Channel.class);
    int length = timeline.instants(STANDS_S);
    int end = timeline.indexAt(frozen.toMs());
    for (int from = timeline.indexAt(frozen.fromMs()); from + length <= end; from += length) {
      Stretch stretch = new Stretch(from, from + length);
      Set<Channel> standing = EnumSet.noneOf(Channel.class);
      beside.forEach(
          (witness, track) -> {
            if (WaterMovement.moves(track, stretch)) {
              sawItMove.add(witness);
            } else if (sawItMove.contains(witness) && WaterMovement.stands(track, stretch)) {
              standing.add(witness);
            }
          });
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
