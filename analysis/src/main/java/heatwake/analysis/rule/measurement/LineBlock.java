package heatwake.analysis.rule.measurement;

import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * Means over three minutes of steady running of the refrigerant lines and of what they depend on.
 * NaN where a channel says nothing.
 */
record LineBlock(
    long startMs,
    long endMs,
    double suctionK,
    double liquidK,
    double dischargeK,
    double condensingK,
    double waterInK,
    double airK,
    BlockDuty duty) {
  private static final double LENGTH_S = 180;

  /** What is called steady has run for minutes; a lagging clip has this much more, s; ours. */
  private static final double SETTLES_S = 60;

  /** The blocks of each spell of steady running, in order. */
  static List<List<LineBlock>> spells(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Circuit circuit = Circuit.of(timeline, evidence.recording().rig());
    int length = timeline.instants(LENGTH_S);
    int settles = timeline.instants(SETTLES_S);
    List<List<LineBlock>> spells = new ArrayList<>();
    for (Stretch stretch : Stretch.where(phases.size(), i -> phases.is(i, Phase.STEADY))) {
      List<LineBlock> blocks = new ArrayList<>();
      for (int i = stretch.from() + settles; i + length <= stretch.to(); i += length) {
        blocks.add(of(timeline, circuit, new Stretch(i, i + length)));
      }
      spells.add(blocks);
    }
    return spells;
  }

  private static LineBlock of(Timeline timeline, Circuit circuit, Stretch stretch) {
    double air = stretch.mean(timeline.of(Channel.AIR_IN));
    return new LineBlock(
        timeline.timeMs(stretch.from()),
        timeline.timeMs(stretch.to() - 1),
        stretch.mean(timeline.of(Channel.TEMP_SUCTION)),
        stretch.mean(timeline.of(Channel.TEMP_LIQUID)),
        stretch.mean(timeline.of(Channel.TEMP_DISCHARGE)),
        stretch.mean(circuit.condensingK()),
        stretch.mean(timeline.of(Channel.WATER_IN)),
        Double.isNaN(air) ? stretch.mean(timeline.of(Channel.AIR_AMBIENT)) : air,
        BlockDuty.over(timeline, stretch));
  }

  /** The mean of one of the lines, K. */
  double lineK(Channel line) {
    return switch (line) {
      case TEMP_SUCTION -> suctionK;
      case TEMP_LIQUID -> liquidK;
      case TEMP_DISCHARGE -> dischargeK;
      default -> throw new IllegalArgumentException(line + " is no line of the circuit");
    };
  }

  /** Whether the high side and one more of low side and power are known, and keep their level. */
  boolean sameDuty(LineBlock other, double share) {
    return duty.isKnownBeside(other.duty) && duty.keeps(other.duty, share);
  }
}
