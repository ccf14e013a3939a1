package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** How far too little water through a condenser lets it condense above the water that leaves it. */
final class LittleWater {
  /**
   * Heat passes to turbulent water in a pipe by this power of its flow (Dittus and Boelter; value
   * from memory), to laminar water less so.
   */
  private static final double FLOW_POWER = 0.8;

  /** Standard uncertainties of the flow that are given away; GUM: k = 2. */
  private static final double FLOW_FACTOR = 2;

  /** Less water than this share of the least is not reckoned with; ours. */
  private static final double LEAST_SHARE = 0.2;

  private LittleWater() {}

  /**
   * Whether little water alone can make the condenser's approach. At equal heat it grows by no more
   * than the heat transfer falls, and that falls by no more than the water side's own. Yes where
   * flow or approach are not known.
   */
  static boolean explainsApproach(Duty duty, Heater heater) {
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
