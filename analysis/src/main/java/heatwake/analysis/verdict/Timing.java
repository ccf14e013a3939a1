package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/** When a flag must stand to be explained by another. */
enum Timing {
  /** While the other stands. */
  TOGETHER {
    @Override
    boolean fits(Flag cause, Flag flag) {
      return Overlap.any(cause, flag);
    }
  },

  /**
   * While the other stands or after it began: a switch that trips may do so only once the circuit
   * no longer comes to the steady state in which its cause is seen.
   */
  TOGETHER_OR_LATER {
    @Override
    boolean fits(Flag cause, Flag flag) {
      return Overlap.any(cause, flag) || flag.startMs() >= cause.startMs();
    }
  };

  abstract boolean fits(Flag cause, Flag flag);
}
