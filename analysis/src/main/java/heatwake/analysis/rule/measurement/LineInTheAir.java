package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Optional;

/** A clip that goes to the air while the circuit stands. */
final class LineInTheAir {
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

  /** Blocks of three minutes before and after; ours. */
  private static final int BEFORE = 2;

  private static final int AFTER = 3;

  private LineInTheAir() {}

  /**
   * The first time at which a clip does.
   *
   * @param spells blocks of steady running in which it was read
   */
  static Optional<LineSlip> in(Evidence evidence, Channel line, List<List<LineBlock>> spells) {
    return spells.stream().flatMap(spell -> moved(evidence, line, spell).stream()).findFirst();
  }

  /** The first time in one spell of running from which it lies in the air. */
  private static Optional<LineSlip> moved(Evidence evidence, Channel line, List<LineBlock> spell) {
    for (int at = BEFORE; at + 1 + AFTER <= spell.size(); at++) {
      LineBlock before = spell.get(at - 1);
      double limitK =
          Math.max(LEAST_K, FACTOR * LineSlip.standardK(evidence, line, before.lineK(line)));
      LineBlock earlier = spell.get(at - BEFORE);
      boolean stoodBefore = Math.abs(before.lineK(line) - earlier.lineK(line)) < limitK / 2;
      // The block in which it moves tells nothing.
      List<LineBlock> after = spell.subList(at + 1, spell.size());
      if (stoodBefore
          && after.stream().allMatch(now -> liesInTheAir(line, before, now, limitK))
          && after.subList(0, AFTER).stream().allMatch(now -> circuitStands(line, before, now))) {
        LineBlock now = after.get(after.size() - 1);
        return Optional.of(
            new LineSlip(
                line,
                before.startMs(),
                line.id()
                    + " went from "
                    + Wording.celsius(before.lineK(line))
                    + " to "
                    + Wording.celsius(now.lineK(line))
                    + ", towards the air at "
                    + Wording.celsius(now.airK())
                    + ", while the pressures stood"));
      }
    }
    return Optional.empty();
  }

  private static boolean liesInTheAir(
      Channel line, LineBlock before, LineBlock now, double limitK) {
    double drift = now.lineK(line) - before.lineK(line);
    double away = now.airK() - before.lineK(line);
    return Math.abs(drift) > limitK
        && drift * away > 0
        && Math.abs(now.airK() - now.lineK(line)) < NEARER * Math.abs(away);
  }

  private static boolean circuitStands(Channel line, LineBlock before, LineBlock now) {
    double drift = now.lineK(line) - before.lineK(line);
    double follows = Math.abs(now.dischargeK() - before.dischargeK());
    return before.sameDuty(now, SAME_DUTY)
        && !(Math.abs(now.waterInK() - before.waterInK()) > SAME_WATER_K)
        && (line != Channel.TEMP_SUCTION || follows < FOLLOWS * Math.abs(drift));
  }
}
