package heatwake.analysis.startup;

import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.refrigerant.HighSideLimit;
import heatwake.analysis.rule.water.WaterLoss;
import heatwake.analysis.timeline.Timeline;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * What speaks against the flow switch although the compressor stopped with the water. The switch of
 * the high side stops it too, later and hotter: a heater whose flow switch sticks passes no test by
 * that.
 */
final class FlowSwitchDoubt {
  /** A switch that opens does so long before; ours. */
  private static final double STAYS_CLOSED_S = 60;

  /** The greatest pressure may be read so long after the compressor's stop is seen, s; ours. */
  private static final double READ_LATER_S = 15;

  private FlowSwitchDoubt() {}

  /** Whether its own reading says that it stayed closed without water. */
  static boolean staysClosed(Timeline timeline, WaterLoss loss) {
    Map<Channel, Track> said = WaterMovement.ofHeater(timeline);
    Track closed = said.get(Channel.FLOW_SWITCH);
    Track flow = said.get(Channel.FLOW_HEATER);
    return closed != null
        && flow != null
        && loss.durationS(timeline) >= STAYS_CLOSED_S
        && WaterMovement.stands(flow, loss.stretch())
        && WaterMovement.moves(closed, loss.stretch());
  }

  /**
   * The high side at the stop, gauge Pa, where it had come near its own switch by then; empty where
   * it had not, or it is not known.
   */
  static OptionalDouble cutOutPa(Evidence evidence, WaterLoss loss) {
    Timeline timeline = evidence.timeline();
    double[] high = timeline.of(Channel.PRESSURE_DISCHARGE);
    int from = loss.stretch().from();
    int to = from + timeline.instants(loss.overlapS(timeline) + READ_LATER_S);
    OptionalDouble highest =
        IntStream.range(from, Math.min(high.length, to))
            .mapToDouble(i -> high[i])
            .filter(pa -> !Double.isNaN(pa))
            .max();
    OptionalDouble limit = HighSideLimit.pa(evidence.recording().rig());
    return highest.isPresent() && limit.isPresent() && highest.getAsDouble() > limit.getAsDouble()
        ? highest
        : OptionalDouble.empty();
  }
}
