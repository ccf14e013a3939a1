package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/**
 * A flow that reads on without a change while the other probes of the water say that it came to
 * stand. They must have seen it move under the same reading before: a pump on a slow speed may let
 * a flow switch open and a filter gauge fall to nothing, but its flow reads less than before.
 */
public final class FrozenFlow {
  /** Water and paddles have come to rest after a pump's stop in this time; ours, s. */
  private static final double STANDS_S = 180;

  /** One probe of the water may be wrong itself; ours. */
  private static final int WITNESSES = 2;

  /** A shorter standstill is not judged, s; ours. */
  public static final double LEAST_S = 900;

  /** Nor one of fewer readings; ours. */
  public static final int LEAST_READINGS = 20;

  /** Interpolation between two equal readings may change the last bits of a double. */
  private static final double SAME = 1e-12;

  private FrozenFlow() {}

  /** Two probes that say the water came to stand for three minutes or more; else none. */
  public static Set<Channel> witnesses(Channel flow, Timeline timeline, Stretch frozen) {
    Map<Channel, Track> beside = WaterMovement.beside(flow, timeline);
    Set<Channel> sawItMove = EnumSet.noneOf(Channel.class);
    int length = timeline.instants(STANDS_S);
    for (int from = frozen.from(); from + length < frozen.to(); from += length) {
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
        return standing;
      }
    }
    return Set.of();
  }

  /** Takes from what a flow says of the water the times at which it reads on so. */
  static void silence(Track said, Channel flow, Timeline timeline) {
    double[] values = timeline.of(flow);
    double leastS =
        Math.max(LEAST_S, (LEAST_READINGS - 1) * (double) timeline.intervalMs(flow) / 1e3);
    for (int from = 0; from < values.length; ) {
      int to = from + 1;
      while (to < values.length
          && Math.abs(values[to] - values[from]) <= SAME * Math.abs(values[from])) {
        to++;
      }
      Stretch stretch = new Stretch(from, to);
      if (said.yes(from)
          && (to - 1 - from) * timeline.stepS() >= leastS
          && !witnesses(flow, timeline, stretch).isEmpty()) {
        said.fill(from, to, Track.UNKNOWN);
      }
      from = to;
    }
  }
}
