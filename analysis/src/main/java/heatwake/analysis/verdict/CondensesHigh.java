package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;

/**
 * Little water strains a motor only by the condensing pressure it brings: that is flagged, or seen
 * above what sound heaters have, or it explains the power that is drawn. Water that leaves far
 * hotter brings it at a usual approach too.
 */
final class CondensesHigh implements Condition {
  private static final String APPROACH = "condenser-approach";
  private static final String PRESSURE = "high-pressure";

  @Override
  public String words() {
    return "only where `%s` or `%s` stands too, or the circuit condenses above the band below, or its condensing temperature explains a power above the nameplate's"
        .formatted(APPROACH, PRESSURE);
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return run.standsWith(flag, APPROACH)
        || run.standsWith(flag, PRESSURE)
        || run.meanDuring(flag)
            .filter(mean -> isAbove(Symptom.CONDENSING, mean, run) || headExplains(mean, run))
            .isPresent();
  }

  private static boolean headExplains(Duty mean, FlagsOfRun run) {
    return isAbove(Symptom.POWER, mean, run)
        && mean.has(DutyFigure.UNEXPLAINED_POWER_RATIO)
        && !isAbove(Symptom.UNEXPLAINED_POWER, mean, run);
  }

  private static boolean isAbove(Symptom symptom, Duty mean, FlagsOfRun run) {
    return symptom.grade(mean, run.heater()).orElse(0) > 0;
  }
}
