package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/** A flow that was too low from the beginning was not brought there by falling. */
final class FlowWasEnough implements Condition {
  @Override
  public String words() {
    return "only if the flow was enough to begin with";
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return new Fall(cause).mayHaveBrought(flag);
  }
}
