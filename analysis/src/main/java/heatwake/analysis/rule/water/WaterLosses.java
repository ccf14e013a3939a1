package heatwake.analysis.rule.water;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/** Finds the times without water in a run. */
public final class WaterLosses {
  /** A heater that stops this long before the water has not stopped for want of it (ours). */
  private static final double BELONGS_TOGETHER_S = 60;

  /** Filter pressure or flow of all water above this share of the usual: the pump pushes (ours). */
  static final double PUSHES_SHARE = 0.4;

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final Track moves;

  private WaterLosses(Evidence evidence) {
    this.timeline = evidence.timeline();
    this.phases = evidence.phaseGrid();
    this.moves = WaterMovement.of(timeline);
  }

  /** Every time without water, in order. */
  public static List<WaterLoss> in(Evidence evidence) {
    return new WaterLosses(evidence).all();
  }

  /** The channels that tell whether water moves. */
  public static boolean canBeSeen(Timeline timeline) {
    return timeline.has(Channel.FLOW_HEATER)
        || timeline.has(Channel.FLOW_TOTAL)
        || timeline.has(Channel.FLOW_SWITCH)
        || timeline.has(Channel.PUMP_ON);
  }

  /** Usual time between readings of the slowest channel that tells of water or compressor, s. */
  public static double slowestIntervalS(Timeline timeline) {
    double slowest = timeline.stepS();
    for (Channel channel :
        List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL, Channel.POWER, Channel.CURRENT)) {
      if (timeline.has(channel)) {
        slowest = Math.max(slowest, timeline.intervalMs(channel) / 1e3);
      }
    }
    return slowest;
  }

  /** Over moments in which nothing was read. */
  private List<WaterLoss> all() {
    int unread = timeline.instants(Math.max(BELONGS_TOGETHER_S, 3 * slowestIntervalS(timeline)));
    return Stretch.bridged(moves.size(), moves::no, unread, moves::yes).stream()
        .map(
            stretch ->
                new WaterLoss(
                    stretch,
                    stretch.from() == 0,
                    stretch.to() == moves.size(),
                    heatedUntil(stretch.from()),
                    runsWithin(stretch),
                    pump(stretch)))
        .toList();
  }

  private boolean heatedUntil(int from) {
    double together = Math.max(BELONGS_TOGETHER_S, 2 * slowestIntervalS(timeline));
    int back = timeline.instants(together);
    for (int i = Math.max(0, from - back); i < from; i++) {
      if (phases.compressorRuns(i)) {
        return true;
      }
    }
    return false;
  }

  private List<Stretch> runsWithin(Stretch stretch) {
    return Stretch.where(
        phases.size(), i -> i >= stretch.from() && i < stretch.to() && phases.compressorRuns(i));
  }

  private WaterLoss.Pump pump(Stretch stretch) {
    double said = stretch.mean(timeline.of(Channel.PUMP_ON));
    if (!Double.isNaN(said)) {
      return said > 0.8
          ? WaterLoss.Pump.RAN
          : said < 0.2 ? WaterLoss.Pump.STOOD : WaterLoss.Pump.NOT_KNOWN;
    }
    for (Channel channel : List.of(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER)) {
      double without = stretch.mean(timeline.of(channel));
      double with = Stretch.meanWhere(timeline.of(channel), moves::yes);
      if (without > PUSHES_SHARE * with) {
        return WaterLoss.Pump.RAN;
      }
    }
    return WaterLoss.Pump.NOT_KNOWN;
  }
}
