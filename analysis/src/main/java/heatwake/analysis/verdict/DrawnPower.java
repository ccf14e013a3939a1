package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowCop;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * What the heater draws for right heat.
 *
 * @param power over the nameplate's, as far as the head on the condenser does not explain it where
 *     that is known
 * @param cop over the nameplate's
 */
record DrawnPower(Optional<Estimate> power, Optional<Estimate> cop) {
  static DrawnPower of(Duty mean) {
    return new DrawnPower(
        mean.of(DutyFigure.UNEXPLAINED_POWER_RATIO).or(() -> mean.of(DutyFigure.POWER_RATIO)),
        mean.of(DutyFigure.COP_RATIO));
  }

  /**
   * Power beyond doubt above what nameplate and head explain, and not for more heat: a fast
   * inverter gives more heat for it, so that its COP is no lower than usual.
   */
  boolean isTooMuch() {
    return power
            .filter(ratio -> Doubt.above(ratio, Symptom.UNEXPLAINED_POWER.normalTo()))
            .isPresent()
        && cop.filter(ratio -> ratio.value() < 1 - Duty.CLOSE_TO_PLATE).isPresent();
  }

  /** The COP in words where it is likelier low than not. */
  Optional<String> waste() {
    return cop.filter(known -> isLikelierWasteful())
        .map(known -> "and COP is " + Wording.percent(known) + " of the nameplate's");
  }

  /** Whether the COP is likelier low than not. */
  boolean isLikelierWasteful() {
    return cop.filter(ratio -> ratio.probabilityAbove(LowCop.MATERIAL_RATIO) < 0.5).isPresent();
  }
}
