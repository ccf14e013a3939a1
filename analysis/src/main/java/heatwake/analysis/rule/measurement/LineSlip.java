package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A clip of the refrigerant circuit that is off its line: it goes to the air while the circuit
 * stands, or reads what no line can have.
 *
 * @param line temp-suction, temp-liquid or temp-discharge
 * @param startMs from when it cannot be believed, UTC milliseconds
 * @param words what was seen, in words
 */
record LineSlip(Channel line, long startMs, String words) {
  static final String LIMITS =
      "A clip of the circuit (temp-suction, temp-liquid, temp-discharge) is off its line where it"
          + " goes to the air within 3 min of steady running, against the 6 min before and for 9 min"
          + " and all that follows: by more than 5 K and 5 standard uncertainties, and more than half"
          + " of the way, while high side, low side and power, as far as read, keep within 5 % and"
          + " the entering water within 1 K; the suction line only where the discharge line does not"
          + " follow it (25 %). Or where, for 15 min and nine tenths of the steady running, the"
          + " discharge line reads more than 3 K and 3 standard uncertainties below the condensing"
          + " temperature, or the liquid line more than 5 K and 3 below the entering water, towards"
          + " the air, in a circuit that condenses above both: gas that has not condensed is no"
          + " colder, and water cools nothing below itself (second law; the margins are ours).";

  private static final List<Channel> LINES =
      List.of(Channel.TEMP_SUCTION, Channel.TEMP_LIQUID, Channel.TEMP_DISCHARGE);

  /** A valve that hunts moves a line by less while the pressures stand, K; ours. */
  private static final double LEAST_K = 5;

  /** Nor is a move under this many standard uncertainties judged; ours. */
  private static final double FACTOR = 5;

  /** What is left of the way to the air; ours. */
  private static final double NEARER = 0.5;

  /** High side, low side and power keep their level within this share; ours. */
  private static final double SAME_DUTY = 0.05;

  /** And the entering water within this, K; ours. */
  private static final double SAME_WATER_K = 1;

  /** Hotter suction gas leaves the compressor hotter, about kelvin for kelvin; ours, of that. */
  private static final double FOLLOWS = 0.25;

  /** Blocks of three minutes before and after, and for what cannot be; ours. */
  private static final int BEFORE = 2;

  private static final int AFTER = 3;
  private static final int IMPOSSIBLE = 5;
  private static final double NEARLY_ALL = 0.9;

  /** A clip leans to the air, and liquid may cool a little on its way; ours. */
  private static final double GAS_BELOW_K = 3;

  private static final double LIQUID_BELOW_K = 5;
  private static final double BELOW_FACTOR = 3;

  /** Every clip that is off its line, with the first time at which it shows. */
  static List<LineSlip> in(Evidence evidence) {
    List<LineSlip> found = new ArrayList<>();
    for (Channel line : LINES) {
      if (evidence.timeline().has(line)) {
        List<List<LineBlock>> spells = LineBlock.spells(evidence, line);
        impossible(evidence, line, spells)
            .or(
                () ->
                    spells.stream()
                        .flatMap(spell -> moved(evidence, line, spell).stream())
                        .findFirst())
            .ifPresent(found::add);
      }
    }
    return found;
  }

  private static double standardK(Evidence evidence, Channel line, double atK) {
    return ProbeUncertainty.of(evidence.recording().rig(), line).atTemperatureK(atK);
  }

  /** The first time in one spell of running from which it lies in the air. */
  private static Optional<LineSlip> moved(Evidence evidence, Channel line, List<LineBlock> spell) {
    for (int at = BEFORE; at + 1 + AFTER <= spell.size(); at++) {
      LineBlock before = spell.get(at - 1);
      double limitK = Math.max(LEAST_K, FACTOR * standardK(evidence, line, before.lineK()));
      LineBlock earlier = spell.get(at - BEFORE);
      boolean stoodBefore = Math.abs(before.lineK() - earlier.lineK()) < limitK / 2;
      // The block in which it moves tells nothing.
      List<LineBlock> after = spell.subList(at + 1, spell.size());
      if (stoodBefore
          && after.stream().allMatch(now -> liesInTheAir(before, now, limitK))
          && after.subList(0, AFTER).stream().allMatch(now -> circuitStands(line, before, now))) {
        LineBlock now = after.get(after.size() - 1);
        return Optional.of(
            new LineSlip(
                line,
                before.startMs(),
                line.id()
                    + " went from "
                    + Wording.celsius(before.lineK())
                    + " to "
                    + Wording.celsius(now.lineK())
                    + ", towards the air at "
                    + Wording.celsius(now.airK())
                    + ", while the pressures stood"));
      }
    }
    return Optional.empty();
  }

  private static boolean liesInTheAir(LineBlock before, LineBlock now, double limitK) {
    double drift = now.lineK() - before.lineK();
    double away = now.airK() - before.lineK();
    return Math.abs(drift) > limitK
        && drift * away > 0
        && Math.abs(now.airK() - now.lineK()) < NEARER * Math.abs(away);
  }

  private static boolean circuitStands(Channel line, LineBlock before, LineBlock now) {
    double drift = now.lineK() - before.lineK();
    double follows = Math.abs(now.dischargeK() - before.dischargeK());
    return before.sameDuty(now, SAME_DUTY)
        && !(Math.abs(now.waterInK() - before.waterInK()) > SAME_WATER_K)
        && (line != Channel.TEMP_SUCTION || follows < FOLLOWS * Math.abs(drift));
  }

  /** One that reads what no line can have, wherever the heater runs steadily. */
  private static Optional<LineSlip> impossible(
      Evidence evidence, Channel line, List<List<LineBlock>> spells) {
    if (line == Channel.TEMP_SUCTION) {
      return Optional.empty();
    }
    List<LineBlock> all = spells.stream().flatMap(List::stream).toList();
    List<LineBlock> cold = all.stream().filter(block -> isTooCold(evidence, line, block)).toList();
    if (cold.size() < IMPOSSIBLE || cold.size() < NEARLY_ALL * all.size()) {
      return Optional.empty();
    }
    double lineK = cold.stream().mapToDouble(LineBlock::lineK).average().orElseThrow();
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
    double limitK = belowK + BELOW_FACTOR * standardK(evidence, line, block.lineK());
    double boundK = boundK(line, block);
    return gasIsCompressed(block) && boundK - block.lineK() > limitK && block.airK() < boundK;
  }

  /** A compressor that moves nothing leaves its lines as cold as the air. */
  private static boolean gasIsCompressed(LineBlock block) {
    return block.condensingK() > block.airK() && !(block.condensingK() <= block.waterInK());
  }
}
