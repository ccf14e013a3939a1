package heatwake.dashboard.score;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;

/**
 * The five outcomes by which diagnostic protocols are scored: Yuill and Braun, HVAC&amp;R Research
 * 19(7), 2013 (the five are named in its abstract; their exact wording is from memory).
 */
enum Outcome {
  /** A fault, and the analysis says that it cannot tell. */
  NO_RESPONSE,
  /** The fault is named and on the right side, or a healthy run passes without a flag. */
  CORRECT,
  /** A healthy run, and something is said to be wrong. */
  FALSE_ALARM,
  /** A fault, and the run is called healthy. */
  MISSED,
  /** A fault, and something else is named or another side blamed. */
  MISDIAGNOSIS;

  static Outcome of(Case.Truth truth, Findings findings) {
    Side side = findings.verdict().side();
    boolean rightSide = truth.sides().contains(side);
    if (truth.isHealthy()) {
      return findings.flags().isEmpty() && rightSide ? CORRECT : FALSE_ALARM;
    }
    boolean named = findings.flags().stream().map(Flag::rule).anyMatch(truth.named()::contains);
    if (named && (rightSide || side == Side.UNDECIDED)) {
      return CORRECT;
    }
    boolean blamesOther =
        findings.flags().stream().map(Flag::rule).anyMatch(rule -> !truth.expects(rule));
    if (named || blamesOther || (!rightSide && side != Side.HEALTHY && side != Side.UNDECIDED)) {
      return MISDIAGNOSIS;
    }
    boolean hinted = findings.flags().stream().map(Flag::rule).anyMatch(truth::expects);
    return side == Side.UNDECIDED || hinted ? NO_RESPONSE : MISSED;
  }
}
