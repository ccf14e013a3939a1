package heatwake.analysis.verdict;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.scenario.AtDuty;

/** A sound heater at three quarters of its power. */
final class AtPartSpeed {
  private AtPartSpeed() {}

  static AtDuty slow() {
    return AtDuty.sound()
        .set(DutyFigure.HEAT_RATIO, 0.8, 0.03)
        .set(DutyFigure.POWER_RATIO, 0.78, 0.025)
        .set(DutyFigure.COP_RATIO, 1.03, 0.05);
  }

  static AtDuty nearlyWarm(AtDuty run) {
    return run.set(DutyFigure.WATER_IN, 273.15 + 27.5, 0.1);
  }
}
