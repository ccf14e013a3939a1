package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.descriptive.NaNPolicy;

/**
 * Means over five minutes of one way of running. NaN where a channel says nothing.
 *
 * @param heats whether the heater ran steadily; else water circulated with the compressor at rest
 */
record PipeBlock(
    boolean heats,
    long startMs,
    long endMs,
    double inK,
    double outK,
    double poolK,
    double airK,
    double flowM3PerS,
    BlockDuty duty) {

  private static final double LENGTH_S = 300;

  /**
   * Growth of a refrigerant's saturation pressure, 1/K. Those of pool heaters have 0.023 to 0.028
   * at 30 to 45 °C (slope of their saturation lines); the least makes the most of a change.
   */
  private static final double PRESSURE_PER_K = 0.023;

  /** Water and pipes have settled this long after a change, s; common practice. */
  private static final double SETTLES_S = 300;

  /** The blocks of steady heating, and those of circulating water. */
  static List<List<PipeBlock>> regimes(Evidence evidence) {
    return List.of(steady(evidence), blocks(evidence, Phase.CIRCULATING));
  }

  /** The blocks of steady heating. */
  static List<PipeBlock> steady(Evidence evidence) {
    return blocks(evidence, Phase.STEADY);
  }

  private static List<PipeBlock> blocks(Evidence evidence, Phase phase) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    int length = (int) Math.max(1, Math.round(LENGTH_S / timeline.stepS()));
    int settles = timeline.instants(SETTLES_S);
    List<PipeBlock> blocks = new ArrayList<>();
    // Standing water tells nothing of the pipes beside it.
    Track moves = WaterMovement.of(timeline);
    for (Stretch stretch : Stretch.where(phases.size(), i -> phases.is(i, phase) && !moves.no(i))) {
      for (int i = stretch.from() + settles; i + length <= stretch.to(); i += length) {
        PipeBlock block = of(timeline, phase == Phase.STEADY, new Stretch(i, i + length));
        if (!Double.isNaN(block.inK + block.outK)) {
          blocks.add(block);
        }
      }
    }
    return blocks;
  }

  private static PipeBlock of(Timeline timeline, boolean heats, Stretch stretch) {
    double air = stretch.mean(timeline.of(Channel.AIR_IN));
    return new PipeBlock(
        heats,
        timeline.timeMs(stretch.from()),
        timeline.timeMs(stretch.to() - 1),
        stretch.mean(timeline.of(Channel.WATER_IN)),
        stretch.mean(timeline.of(Channel.WATER_OUT)),
        stretch.mean(timeline.of(Channel.WATER_POOL)),
        Double.isNaN(air) ? stretch.mean(timeline.of(Channel.AIR_AMBIENT)) : air,
        stretch.mean(timeline.of(Channel.FLOW_HEATER)),
        BlockDuty.over(timeline, stretch));
  }

  /** Middle value of each figure over some blocks. */
  static PipeBlock median(List<PipeBlock> blocks) {
    PipeBlock first = blocks.get(0);
    return new PipeBlock(
        first.heats,
        first.startMs,
        blocks.get(blocks.size() - 1).endMs,
        median(blocks, PipeBlock::inK),
        median(blocks, PipeBlock::outK),
        median(blocks, PipeBlock::poolK),
        median(blocks, PipeBlock::airK),
        median(blocks, PipeBlock::flowM3PerS),
        new BlockDuty(
            median(blocks, block -> block.duty.powerW()),
            median(blocks, block -> block.duty.highPa()),
            median(blocks, block -> block.duty.lowPa())));
  }

  private static double median(List<PipeBlock> blocks, ToDoubleFunction<PipeBlock> figure) {
    return Median.withDefaults()
        .with(NaNPolicy.EXCLUDE)
        .evaluate(blocks.stream().mapToDouble(figure).toArray());
  }

  /** Whether power, pressures and flow, as far as known, keep their level within a share. */
  boolean sameDuty(PipeBlock other, double share) {
    return BlockDuty.keeps(flowM3PerS, other.flowM3PerS, share)
        && (!heats || duty.keeps(other.duty, share));
  }

  /** Whether anything tells what the compressor does. */
  boolean hasDuty() {
    return !Double.isNaN(duty.powerW()) || !Double.isNaN(duty.highPa());
  }

  /** Rise from inlet to outlet, K. */
  double riseK() {
    return outK - inK;
  }

  /** By how much the condensing temperature moves to another block, K; NaN if not known. */
  double condensingMovesK(PipeBlock other) {
    return Math.log(other.duty.highPa() / duty.highPa()) / PRESSURE_PER_K;
  }
}
