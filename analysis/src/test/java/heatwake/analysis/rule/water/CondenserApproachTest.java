package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Side;
import heatwake.analysis.scenario.AtDuty;
import org.junit.jupiter.api.Test;

class CondenserApproachTest {
  private final CondenserApproach rule = new CondenserApproach();

  private static AtDuty approach(double approachK, double standardK) {
    return AtDuty.sound()
        .set(DutyFigure.LOAD, 1, 0)
        .set(DutyFigure.CONDENSER_APPROACH, approachK, standardK)
        .set(DutyFigure.CONDENSING, 273.15 + 28.5 + approachK, standardK);
  }

  @Test
  void saysHowFarAndAtWhatLoad() {
    var flag = onlyFlag(rule, approach(18.2, 0.4).evidence());
    assertThat(flag.evidence())
        .isEqualTo(
            "Condensing 18.2 K above the leaving water (at 46.7 °C) at 100 % of full load,"
                + " subcooling 5.0 K; sound heaters stay under 11 K at full load");
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.causes().get(0)).contains("scale");
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, approach(14, 0).evidence());
    assertClear(rule, approach(15.1, 0.4).evidence());
    onlyFlag(rule, approach(15.3, 0.4).evidence());
  }

  @Test
  void aMerelyUnusualApproachNeedsCopOrPowerToBearItOut() {
    assertClear(rule, approach(12.5, 0.4).evidence());
    onlyFlag(rule, approach(12.5, 0.4).set(DutyFigure.COP_RATIO, 0.85, 0.04).evidence());
    onlyFlag(rule, approach(12.5, 0.4).set(DutyFigure.POWER_RATIO, 1.12, 0.03).evidence());
    assertClear(rule, approach(11.7, 0.4).set(DutyFigure.POWER_RATIO, 1.12, 0.03).evidence());
  }

  /** Once it is half way to what no sound heater shows, k = 2 of COP or power is enough. */
  @Test
  void theFurtherItIsOutTheLessHasToBearItOut() {
    onlyFlag(rule, approach(13.6, 0.5).set(DutyFigure.COP_RATIO, 0.83, 0.08).evidence());
    onlyFlag(rule, approach(13.6, 0.5).set(DutyFigure.POWER_RATIO, 1.19, 0.09).evidence());
    assertClear(rule, approach(13.4, 0.5).set(DutyFigure.COP_RATIO, 0.83, 0.08).evidence());
    assertClear(rule, approach(13.6, 0.5).set(DutyFigure.COP_RATIO, 0.85, 0.08).evidence());
  }

  @Test
  void anApproachGoesWithTheHeatPassed() {
    // 18 K at 1.3 times the rated heat is 13.8 K at the rated heat.
    assertClear(rule, approach(18, 0).set(DutyFigure.LOAD, 1.3, 0).evidence());
  }

  @Test
  void liquidBackedUpPointsToTheRefrigerant() {
    var flag = onlyFlag(rule, approach(11, 0.4).set(DutyFigure.SUBCOOLING, 13, 0.5).evidence());
    assertThat(flag.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(flag.causes().get(0)).isEqualTo("too much refrigerant");
  }

  /** Of 22 K to the entering water, 10.5 K is less than sound heaters' 6 of 10.5 K. */
  @Test
  void subcoolingThatTheHeadAloneBringsPointsToTheWater() {
    var flag =
        onlyFlag(
            rule,
            approach(20, 0.4)
                .set(DutyFigure.SUBCOOLING, 10.5, 0.4)
                .set(DutyFigure.SUBCOOLING_SHARE, 0.48, 0.02)
                .evidence());
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.causes().get(0)).contains("scale");
    assertThat(flag.evidence())
        .contains("subcooling 10.5 K (48 % of what the entering water allows)");
  }

  @Test
  void muchLiquidNeedsNoMoreThanAMiddlingApproach() {
    onlyFlag(rule, approach(8.5, 0.4).set(DutyFigure.SUBCOOLING, 16, 0.6).evidence());
    assertClear(rule, approach(8.5, 0.4).set(DutyFigure.SUBCOOLING, 15, 0.6).evidence());
    // A large condenser may be laid out for much subcooling and a small approach.
    assertClear(rule, approach(6, 0.4).set(DutyFigure.SUBCOOLING, 16, 0.6).evidence());
  }

  @Test
  void someLiquidOrGasNeedsCopOrPowerToBearItOut() {
    AtDuty liquid = approach(9, 0.4).set(DutyFigure.SUBCOOLING, 9.5, 0.6);
    assertClear(rule, liquid.evidence());
    onlyFlag(rule, liquid.set(DutyFigure.POWER_RATIO, 1.12, 0.03).evidence());
    AtDuty gas = approach(9, 0.4).set(DutyFigure.STANDING_EXCESS, 3.5, 0.8);
    assertClear(rule, gas.evidence());
    onlyFlag(rule, gas.set(DutyFigure.POWER_RATIO, 1.12, 0.03).evidence());
    assertClear(rule, gas.set(DutyFigure.STANDING_EXCESS, 3.3, 0.8).evidence());
  }

  /**
   * Sound heaters condense up to 11 K above the water, subcool by 4 to 8 K and cool the liquid by
   * some 0.57 of what the water allows (common practice): no one heater goes beyond all three.
   */
  @Test
  void aWideApproachOverMuchLiquidNeedsNoCop() {
    AtDuty filled =
        AtDuty.sound()
            .without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO, DutyFigure.POWER_RATIO)
            .set(DutyFigure.CONDENSER_APPROACH, 12.7, 0.4)
            .set(DutyFigure.LOAD, 1, 0.06)
            .set(DutyFigure.SUBCOOLING, 10.9, 0.6)
            .set(DutyFigure.SUBCOOLING_SHARE, 0.7, 0.035);
    onlyFlag(rule, filled.evidence());
    assertClear(rule, filled.set(DutyFigure.SUBCOOLING_SHARE, 0.62, 0.035).evidence());
    filled.set(DutyFigure.SUBCOOLING_SHARE, 0.7, 0.035);
    assertClear(rule, filled.set(DutyFigure.SUBCOOLING, 9, 0.6).evidence());
    filled.set(DutyFigure.SUBCOOLING, 10.9, 0.6);
    assertClear(rule, filled.set(DutyFigure.CONDENSER_APPROACH, 11.5, 0.4).evidence());
  }

  @Test
  void aCoilShortOfRefrigerantSaysNothingOfTheWater() {
    // At 60 % of the heat 10.5 K is 17.5 K at full load.
    assertClear(
        rule,
        approach(10.5, 0.3)
            .set(DutyFigure.LOAD, 0.6, 0.01)
            .set(DutyFigure.SUPERHEAT, 18, 0.5)
            .evidence());
  }

  /**
   * Want of refrigerant lowers the condensing temperature (Rossi and Braun, HVAC&R Research 3(1),
   * 1997, table of signs): where it is high, low-charge keeps silent, and something else ails.
   */
  @Test
  void aHighCondensingTemperatureIsNotForWantOfRefrigerant() {
    onlyFlag(
        rule,
        approach(18, 0.4)
            .set(DutyFigure.SUPERHEAT, 12.2, 0.4)
            .set(DutyFigure.SUBCOOLING, 0.5, 0.5)
            .evidence());
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound().without(DutyFigure.CONDENSER_APPROACH).evidence()))
        .isEqualTo("condensing temperature or leaving water not known while running steadily");
  }
}
