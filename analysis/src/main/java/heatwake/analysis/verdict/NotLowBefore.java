package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/**
 * A filter that loads up takes nothing of heat and COP at first. What was low in a stretch at the
 * beginning of the fall, with the flow not too low then, has a cause of its own.
 */
final class NotLowBefore implements Condition {
  private static final String LOW_FLOW = "low-heater-flow";

  @Override
  public String words() {
    return "unless it was there in the fall's first part ("
        + Fall.AT_ITS_BEGINNING
        + ") with the flow not too low";
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    Fall fall = new Fall(cause);
    return fall.mayHaveBrought(flag)
        || DutyDuring.steady(flag, run.duties()).stream().noneMatch(fall::hadTheFlow)
        || run.flags().stream()
            .anyMatch(
                one ->
                    one.rule().equals(LOW_FLOW)
                        && one.startMs() <= flag.startMs() + fall.shortMs());
  }
}
