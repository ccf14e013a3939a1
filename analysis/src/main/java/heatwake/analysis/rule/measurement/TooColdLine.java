package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Optional;

/**
 * A clip that reads what its line cannot have: gas under the temperature that it condenses at, or
 * liquid under the water that cools it.
 */
final class TooColdLine {
  /** It reads so for so many blocks of three minutes, and nearly always; ours. */
  private static final int FEWEST = 5;

  private static final double NEARLY_ALL = 0.9;

  /** A clip leans to the air, and liquid may cool a little on its way; ours. */
  private static final double GAS_BELOW_K = 3;

  private static final double LIQUID_BELOW_K = 5;
  private static final double BELOW_FACTOR = 3;

  private TooColdLine() {}

  /**
   * One that does so wherever the heater runs steadily.
   *
   * @param spells blocks of steady running in which it was read
   */
  static Optional<LineSlip> in(Evidence evidence, Channel line, List<List<LineBlock>> spells) {
    if (line == Channel.TEMP_SUCTION) {
      return Optional.empty();
    }
    List<LineBlock> all = spells.stream().flatMap(List::stream).toList();
    List<LineBlock> cold = all.stream().filter(block -> isTooCold(evidence, line, block)).toList();
    if (cold.size() < FEWEST || cold.size() < NEARLY_ALL * all.size()) {
      return Optional.empty();
    }
    double lineK = cold.stream().mapToDouble(block -> block.lineK(line)).average().orElseThrow();
    double boundK = cold.stream().mapToDouble(block -> boundK(line, block)).average().orElseThrow();
    return Optional.of(
        new LineSlip(
            line,
            evidence.recording().startMs(),
            line.id()
                + " reads "
                + Wording.celsius(lineK)
                + (line == Channel.TEMP_DISCHARGE
                    ? ", under the condensing temperature of "
                    : ", under the entering water of ")
                + Wording.celsius(boundK)
                + ": no "
                + (line == Channel.TEMP_DISCHARGE
                    ? "gas that leaves a compressor"
                    : "liquid that leaves a condenser")
                + " is so cold"));
  }

  private static double boundK(Channel line, LineBlock block) {
    return line == Channel.TEMP_DISCHARGE ? block.condensingK() : block.waterInK();
  }

  private static boolean isTooCold(Evidence evidence, Channel line, LineBlock block) {
    double belowK = line == Channel.TEMP_DISCHARGE ? GAS_BELOW_K : LIQUID_BELOW_K;
    double limitK = belowK + BELOW_FACTOR * LineSlip.standardK(evidence, line, block.lineK(line));
    double boundK = boundK(line, block);
    return gasIsCompressed(block) && boundK - block.lineK(line) > limitK && block.airK() < boundK;
  }

  /** A compressor that moves nothing leaves its lines as cold as the air. */
  private static boolean gasIsCompressed(LineBlock block) {
    return block.condensingK() > block.airK() && !(block.condensingK() <= block.waterInK());
  }
}
