package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;

/**
 * Little water strains a motor only by the condensing pressure it brings: that is flagged, or seen
 * above what sound heaters have.
 */
final class CondensesHigh implements Condition {
  private static final String APPROACH = "condenser-approach";
  private static final String PRESSURE = "high-pressure";

  @Override
  public String words() {
    return "only where `%s` or `%s` stands too, or the circuit condenses above the band below"
        .formatted(APPROACH, PRESSURE);
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return run.standsWith(flag, APPROACH)
        || run.standsWith(flag, PRESSURE)
        || run.meanDuring(flag)
            .filter(mean -> Symptom.CONDENSING.grade(mean, run.heater()).orElse(0) > 0)
            .isPresent();
  }
}
