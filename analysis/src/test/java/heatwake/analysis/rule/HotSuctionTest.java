package heatwake.analysis.rule;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.rule.refrigerant.LowCharge;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.verdict.Attribution;
import heatwake.analysis.verdict.Cause;
import org.junit.jupiter.api.Test;

/** Gas in a coil gets no warmer than the air that heats it (second law of thermodynamics). */
class HotSuctionTest {
  /** Superheat 30 K over a coil at 6 Cel, in air of 14 Cel: the line is at 36 Cel. */
  private static AtDuty leaking(double suctionExcessK) {
    return AtDuty.sound()
        .set(DutyFigure.AIR, 273.15 + 14, 0.1)
        .set(DutyFigure.EVAPORATING, 273.15 + 6, 0.4)
        .set(DutyFigure.STANDARD_APPROACH, 9.5, 0.8)
        .set(DutyFigure.CONDENSER_APPROACH, 5, 0.4)
        .set(DutyFigure.SUPERHEAT, 30, 0.5)
        .set(DutyFigure.SUBCOOLING, 3, 0.3)
        .set(DutyFigure.POWER_RATIO, 0.85, 0.02)
        .set(DutyFigure.UNEXPLAINED_POWER_RATIO, 0.8, 0.02)
        .set(DutyFigure.HEAT_RATIO, 0.6, 0.03)
        .set(DutyFigure.COP_RATIO, 0.7, 0.03)
        .set(DutyFigure.SUCTION_EXCESS, suctionExcessK, 0.5);
  }

  @Test
  void showsFromThreeKelvinBeyondDoubt() {
    assertThat(HotSuction.shows(leaking(4.4).duty())).isFalse();
    assertThat(HotSuction.shows(leaking(4.6).duty())).isTrue();
    assertThat(HotSuction.shows(AtDuty.sound().duty())).isFalse();
    assertThat(HotSuction.shows(leaking(22).set(DutyFigure.SUBCOOLING, 0.8, 0.3).duty())).isFalse();
    assertThat(HotSuction.shows(leaking(22).without(DutyFigure.SUBCOOLING).duty())).isFalse();
  }

  @Test
  void isNoWantOfRefrigerant() {
    onlyFlag(new LowCharge(), leaking(-3).evidence());
    assertClear(new LowCharge(), leaking(22).evidence());
  }

  @Test
  void isSaidWithTheLowHeat() {
    assertThat(onlyFlag(new LowHeat(), leaking(22).evidence()).evidence())
        .endsWith(
            "the suction line is 22.0 K warmer than the entering air: hot gas comes in past the"
                + " reversing valve or back through the compressor");
  }

  @Test
  void itsSuperheatPointsToNoCharge() {
    assertThat(Attribution.of(leaking(22).duty(), Rigs.typical().heater()).likeliest())
        .isEqualTo(Cause.WORN_COMPRESSOR);
  }
}
