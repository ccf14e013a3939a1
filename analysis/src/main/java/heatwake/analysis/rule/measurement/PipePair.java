package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Optional;

/**
 * Two probes on one heater: while it heats on at equal duty and equal flow its rise stays, so inlet
 * and outlet move together. If one stands still to the last digit while the other goes on, the
 * first is stuck.
 */
final class PipePair {
  /** The other must have gone this far, K; ours, well beyond noise. */
  private static final double GONE_ON_K = 0.5;

  /** And this share of the rise, by which an equal duty may change it; ours. */
  private static final double RISE_SHARE = 0.25;

  /** And this many of the first one's digits, so that a coarse reading may stand; ours. */
  private static final double DIGITS = 3;

  /**
   * The same where no flow is measured: the rise may then change with the flow, but not so as to
   * keep one pipe within a digit for so long; ours.
   */
  private static final double DIGITS_WITHOUT_FLOW = 10;

  /** Power, pressures and flow keep their level within this share; ours. */
  private static final double SAME_DUTY = 0.12;

  /** Blocks of 5 min whose middle value is taken at both ends; ours. */
  private static final int BLOCKS = 3;

  private PipePair() {}

  /** The other pipe probe of the heater. */
  static Channel partnerOf(Channel pipe) {
    return pipe == Channel.WATER_IN ? Channel.WATER_OUT : Channel.WATER_IN;
  }

  /** What the other pipe did meanwhile, if the first one must have followed. */
  static Optional<String> leftBehind(Evidence evidence, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (channel != Channel.WATER_IN && channel != Channel.WATER_OUT) {
      return Optional.empty();
    }
    List<PipeBlock> blocks =
        PipeBlock.steady(evidence).stream()
            .filter(block -> block.startMs() >= frozen.fromMs() && block.endMs() <= frozen.toMs())
            .toList();
    Channel other = partnerOf(channel);
    if (blocks.size() < 2 * BLOCKS
        || Slip.isSeen(evidence, other, frozen.fromMs(), frozen.toMs())) {
      return Optional.empty();
    }
    PipeBlock first = PipeBlock.median(blocks.subList(0, BLOCKS));
    for (int k = blocks.size(); k >= 2 * BLOCKS; k--) {
      PipeBlock last = PipeBlock.median(blocks.subList(k - BLOCKS, k));
      boolean isInlet = channel == Channel.WATER_IN;
      double movedK = isInlet ? last.outK() - first.outK() : last.inK() - first.inK();
      if (last.hasDuty()
          && first.sameDuty(last, SAME_DUTY)
          && Math.abs(movedK) > leastK(frozen, first)) {
        return Optional.of(
            other.id()
                + " went on by "
                + Wording.kelvin(Math.abs(movedK))
                + " meanwhile, at equal duty of the heater");
      }
    }
    return Optional.empty();
  }

  private static double leastK(Frozen frozen, PipeBlock first) {
    double digits = Double.isNaN(first.flowM3PerS()) ? DIGITS_WITHOUT_FLOW : DIGITS;
    return Math.max(
        Math.max(GONE_ON_K, RISE_SHARE * Math.abs(first.riseK())), digits * frozen.digitK());
  }
}
