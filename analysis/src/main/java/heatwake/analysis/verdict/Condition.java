package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/**
 * What must be so for one flag to explain another, beside what is asked of every pair of flags. The
 * reason for it is told by its class.
 */
interface Condition {
  /** In words that follow the id of the rule that it is asked of, for the documentation. */
  String words();

  /** Whether it is so for two flags of a run. */
  boolean holds(Flag cause, Flag flag, FlagsOfRun run);
}
