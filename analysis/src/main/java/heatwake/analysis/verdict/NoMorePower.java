package heatwake.analysis.verdict;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.uncertainty.Doubt;

/**
 * What makes a heater draw less power, or as much, is no reason for more. A starved compressor
 * draws less; a motor at low voltage takes more current for the same power. Power above the
 * nameplate's has a cause of its own.
 */
final class NoMorePower implements Condition {
  /** So much of the nameplate's is hardly more; ours. */
  private static final double POWER_AS_PROMISED = 1.1;

  @Override
  public String words() {
    return "unless the power is above " + POWER_AS_PROMISED + " of the nameplate's beyond doubt";
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return run.meanDuring(flag)
        .flatMap(mean -> mean.of(DutyFigure.POWER_RATIO))
        .filter(ratio -> Doubt.above(ratio, POWER_AS_PROMISED))
        .isEmpty();
  }
}
