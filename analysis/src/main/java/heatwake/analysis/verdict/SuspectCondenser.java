package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * A condenser that is worth a look though no limit is passed: one that condenses high above its
 * water, but within what sound ones show, was laid out so, or was laid out for half of it and has
 * scaled, or holds too much refrigerant or air. Its approach alone does not tell which; a COP as
 * promised says that it was laid out so.
 */
final class SuspectCondenser {
  /** From here on it may be twice what it was laid out for, K at full load; ours. */
  private static final double HIGH_K = 8;

  private SuspectCondenser() {}

  /** What makes the condenser suspect, in words; empty if nothing does. */
  static Optional<String> words(Duty duty, Heater heater) {
    Optional<Estimate> approach = Symptom.CONDENSING.figure(duty, heater);
    boolean isHigh = approach.filter(one -> one.value() - one.standard() > HIGH_K).isPresent();
    boolean isAsPromised =
        duty.of(DutyFigure.COP_RATIO)
            .filter(cop -> cop.value() >= 1 - Duty.CLOSE_TO_PLATE)
            .isPresent();
    return isHigh && !isAsPromised
        ? approach.map(one -> SymptomText.of(Symptom.CONDENSING, one) + ", high in that band")
        : Optional.empty();
  }

  /** What to look for. */
  static String nextCheck(Duty duty) {
    return SiteCheck.of(Symptom.CONDENSING, true, duty).orElseThrow();
  }
}
