package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Too little water alone can make the condenser's approach. At equal heat that grows by no more
 * than the heat transfer falls, and that falls by no more than the water side's own. It can where
 * flow or approach are not known.
 */
final class WaterExplains implements Condition {
  /**
   * Heat passes to turbulent water in a pipe by this power of its flow (Dittus and Boelter; value
   * from memory), to laminar water less so.
   */
  private static final double FLOW_POWER = 0.8;

  /** Standard uncertainties of the flow that are given away; GUM: k = 2. */
  private static final double FLOW_FACTOR = 2;

  /** Less water than this share of the least is not reckoned with; ours. */
  private static final double LEAST_SHARE = 0.2;

  @Override
  public String words() {
    return "up to its limit times the flow's share of the nameplate's least to the power of -"
        + FLOW_POWER;
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return run.meanDuring(flag).filter(mean -> !explains(mean, run.heater())).isEmpty();
  }

  private static boolean explains(Duty duty, Heater heater) {
    Optional<Estimate> approach = Symptom.CONDENSING.figure(duty, heater);
    Optional<Estimate> flow = Symptom.FLOW.figure(duty, heater);
    if (approach.isEmpty() || flow.isEmpty()) {
      return true;
    }
    double least = flow.get().value() - FLOW_FACTOR * flow.get().standard();
    double share = Math.max(LEAST_SHARE, Math.min(1, least));
    return !Doubt.above(
        approach.get(), Symptom.CONDENSING.normalTo() * Math.pow(share, -FLOW_POWER));
  }
}
