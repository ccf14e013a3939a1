package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.heat.LowCop;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * What the heater draws for right heat. A load on its meter that shows at rest too, such as the
 * pool pump's, is not the compressor's and is taken off.
 *
 * @param power over the nameplate's, as far as the head on the condenser does not explain it where
 *     that is known
 * @param cop over the nameplate's
 */
record DrawnPower(Optional<Estimate> power, Optional<Estimate> cop) {
  static DrawnPower of(Duty mean, Evidence evidence) {
    double compressors = shareOfCompressor(mean, evidence);
    return new DrawnPower(
        mean.of(DutyFigure.UNEXPLAINED_POWER_RATIO)
            .or(() -> mean.of(DutyFigure.POWER_RATIO))
            .map(ratio -> ratio.times(compressors)),
        mean.of(DutyFigure.COP_RATIO).map(ratio -> ratio.times(1 / compressors)));
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

  /** Whether the COP is likelier low than not. */
  boolean isLikelierWasteful() {
    return cop.filter(ratio -> ratio.probabilityAbove(LowCop.MATERIAL_RATIO) < 0.5).isPresent();
  }

  private static double shareOfCompressor(Duty mean, Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!mean.has(DutyFigure.POWER) || !timeline.has(Channel.POWER)) {
      return 1;
    }
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    double[] watts = timeline.of(Channel.POWER);
    double sum = 0;
    int count = 0;
    for (int i = 0; i < watts.length; i++) {
      if (phases.is(i, Phase.CIRCULATING) && !Double.isNaN(watts[i])) {
        sum += watts[i];
        count++;
      }
    }
    double running = mean.of(DutyFigure.POWER).orElseThrow().value();
    double resting = count == 0 ? 0 : sum / count;
    return resting < running ? 1 - resting / running : 1;
  }
}
