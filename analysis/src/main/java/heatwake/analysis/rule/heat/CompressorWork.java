package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Evidence;

/**
 * Whether the compressor's work is well spent, by its own gauges and no nameplate: what it does of
 * the COP that Carnot allows between evaporating and condensing temperature. One that leaks back
 * does part of its work twice, at any speed and whatever the lift.
 */
final class CompressorWork {
  /**
   * A sound compressor and its expansion valve do 0.5 to 0.6 of Carnot's COP between their own two
   * temperatures (0.65 to 0.75 of the work isentropic, some lost in the valve): common practice. A
   * little less is left to the gauges; what leaks a third of its gas back does 0.4.
   */
  private static final double SOUND_SHARE = 0.48;

  /** No fan takes more of the power than this, at whatever speed the compressor runs; ours. */
  private static final double MOST_OF_FAN = 0.25;

  /** Below this lift a kelvin of either gauge is too much of the share; ours. */
  private static final double LEAST_LIFT_K = 10;

  private CompressorWork() {}

  /** Whether a stretch shows it; what the heater's own fan draws is taken off where it was seen. */
  static boolean isWellSpent(Evidence evidence, Duty duty) {
    if (!duty.has(
        DutyFigure.HEAT, DutyFigure.POWER, DutyFigure.CONDENSING, DutyFigure.EVAPORATING)) {
      return false;
    }
    double condensingK = value(duty, DutyFigure.CONDENSING);
    double liftK = condensingK - value(duty, DutyFigure.EVAPORATING);
    double powerW = value(duty, DutyFigure.POWER);
    double fanW = Math.min(FanAhead.watts(evidence).orElse(0), MOST_OF_FAN * powerW);
    return liftK > LEAST_LIFT_K
        && value(duty, DutyFigure.HEAT) / (powerW - fanW) > SOUND_SHARE * condensingK / liftK;
  }

  private static double value(Duty duty, DutyFigure figure) {
    return duty.of(figure).orElseThrow().value();
  }
}
