package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.uncertainty.Doubt;

/**
 * A constant load beside the compressor on the heater's meter, such as the pool pump's. It
 * falsifies power and COP, but not what changes when the compressor slows down: a constant load is
 * in both speeds alike, so heat and power fall by what the compressor itself gives and takes.
 */
final class ConstantLoad {
  /** Power above the nameplate's that no head explains; see the symptoms' bands. */
  private static final double EXPLAINED = 1.08;

  private ConstantLoad() {}

  /**
   * Whether a constant load beside the compressor leaves room for part speed: at full speed the
   * heat is right and the power beyond doubt more than the nameplate and the head explain, and down
   * to the slower stretch the heat falls by no more than the nameplate's COP for the power. What
   * fails loses more of the heat than of the power.
   *
   * @param full the heater at full speed
   * @param slower the same heater at less power
   * @param copHolds share of the expected COP that holds
   */
  static boolean hidesPartSpeed(Duty full, Duty slower, double copHolds) {
    if (!full.has(
            DutyFigure.HEAT,
            DutyFigure.POWER,
            DutyFigure.EXPECTED_HEAT,
            DutyFigure.POWER_RATIO,
            DutyFigure.HEAT_RATIO)
        || !slower.has(DutyFigure.HEAT, DutyFigure.POWER)
        || LowHeat.isLow(full)
        || !drawsTooMuch(full)) {
      return false;
    }
    double heatFellW = value(full, DutyFigure.HEAT) - value(slower, DutyFigure.HEAT);
    double powerFellW = value(full, DutyFigure.POWER) - value(slower, DutyFigure.POWER);
    double expectedPowerW = value(full, DutyFigure.POWER) / value(full, DutyFigure.POWER_RATIO);
    double promised = value(full, DutyFigure.EXPECTED_HEAT) / expectedPowerW;
    return powerFellW > 0 && heatFellW * copHolds <= promised * powerFellW;
  }

  private static boolean drawsTooMuch(Duty full) {
    return full.of(DutyFigure.UNEXPLAINED_POWER_RATIO)
        .or(() -> full.of(DutyFigure.POWER_RATIO))
        .filter(ratio -> Doubt.above(ratio, EXPLAINED))
        .isPresent();
  }

  private static double value(Duty duty, DutyFigure figure) {
    return duty.of(figure).orElseThrow().value();
  }
}
