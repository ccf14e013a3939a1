package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Doubt;
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
    return isHigh && !isLaidOutSo(duty) ? approach.map(SuspectCondenser::said) : Optional.empty();
  }

  /** Whether it condenses above what sound heaters show, beyond doubt and at a worse COP. */
  static boolean isBeyondSound(Duty duty, Heater heater) {
    return Symptom.CONDENSING
            .figure(duty, heater)
            .filter(one -> Doubt.above(one, Symptom.CONDENSING.normalTo()))
            .isPresent()
        && !isLaidOutSo(duty);
  }

  private static boolean isLaidOutSo(Duty duty) {
    return duty.of(DutyFigure.COP_RATIO)
        .filter(cop -> cop.value() >= 1 - Duty.CLOSE_TO_PLATE)
        .isPresent();
  }

  private static String said(Estimate approach) {
    return SymptomText.of(Symptom.CONDENSING, approach)
        + (approach.value() > Symptom.CONDENSING.normalTo()
            ? ", above that band though not beyond doubt"
            : ", high in that band");
  }

  /** What to look for. */
  static String nextCheck(Duty duty) {
    return SiteCheck.of(Symptom.CONDENSING, true, duty).orElseThrow();
  }
}
