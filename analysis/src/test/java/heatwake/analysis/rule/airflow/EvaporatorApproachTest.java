package heatwake.analysis.rule.airflow;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Side;
import heatwake.analysis.scenario.AtDuty;
import org.junit.jupiter.api.Test;

class EvaporatorApproachTest {
  private final EvaporatorApproach rule = new EvaporatorApproach();

  private static AtDuty approach(double standardConditionsK, double uncertaintyK) {
    return AtDuty.sound()
        .set(DutyFigure.EVAPORATOR_APPROACH, 19, 0.4)
        .set(DutyFigure.EVAPORATING, 273.15 + 8, 0.4)
        .set(DutyFigure.STANDARD_APPROACH, standardConditionsK, uncertaintyK);
  }

  @Test
  void saysHowFarAndWhatThatWouldBeInStandardAir() {
    var flag = onlyFlag(rule, approach(28, 0.8).evidence());
    assertThat(flag.evidence())
        .isEqualTo(
            "Evaporating 19.0 K below the entering air (at 8.0 °C) at 96 % of full load, the air"
                + " cools by 5.5 K; that is 28.0 K at the rated heat in humid air, where sound"
                + " coils stay under 17 K");
    assertThat(flag.side()).isEqualTo(Side.AIRFLOW);
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, approach(24, 0).evidence());
    assertClear(rule, approach(26, 0.7).evidence());
    onlyFlag(rule, approach(26, 0.6).evidence());
  }

  @Test
  void aMerelyUnusualApproachNeedsHeatOrAirToBearItOut() {
    assertClear(rule, approach(19, 0.8).evidence());
    onlyFlag(rule, approach(19, 0.8).set(DutyFigure.HEAT_RATIO, 0.88, 0.04).evidence());
    onlyFlag(rule, approach(19, 0.8).set(DutyFigure.COP_RATIO, 0.85, 0.05).evidence());
    var flag =
        onlyFlag(rule, approach(17, 0.8).set(DutyFigure.AIR_FLOW, 0.04e-3, 0.004e-3).evidence());
    assertThat(flag.causes().get(0)).startsWith("coil blocked");
  }

  /** Two findings that are independent: a surer one makes up for one less sure. */
  @Test
  void littleAirBeyondDoubtMakesUpForAnApproachThatIsLessSure() {
    var flag =
        onlyFlag(rule, approach(19.3, 2.2).set(DutyFigure.AIR_FLOW, 0.023e-3, 0.004e-3).evidence());
    assertThat(flag.evidence()).contains("0.023 kg/s of air for each kW of rated heat");
    // 0.045 is below 0.055 by 2.5 standard uncertainties only; 17 less 2.2 is not 15.
    assertClear(rule, approach(19.3, 2.2).set(DutyFigure.AIR_FLOW, 0.045e-3, 0.004e-3).evidence());
    assertClear(rule, approach(17, 2.2).set(DutyFigure.AIR_FLOW, 0.023e-3, 0.004e-3).evidence());
  }

  @Test
  void aLargeCoilWithHalfItsAirShowsByTheAirAndTheHeat() {
    // Common practice: 0.07 to 0.11 kg/s for each kW of rated heat.
    AtDuty large =
        approach(15.5, 0.7)
            .set(DutyFigure.AIR_FLOW, 0.038e-3, 0.004e-3)
            .set(DutyFigure.HEAT_RATIO, 0.89, 0.035);
    assertThat(onlyFlag(rule, large.evidence()).evidence())
        .endsWith("; 0.038 kg/s of air for each kW of rated heat, where 0.07 to 0.11 is usual");
    assertClear(rule, large.set(DutyFigure.HEAT_RATIO, 0.97, 0.035).evidence());
    assertClear(
        rule,
        approach(15.5, 0.7)
            .set(DutyFigure.AIR_FLOW, 0.045e-3, 0.004e-3)
            .set(DutyFigure.HEAT_RATIO, 0.89, 0.035)
            .evidence());
    assertClear(
        rule,
        approach(13.5, 0.7)
            .set(DutyFigure.AIR_FLOW, 0.038e-3, 0.004e-3)
            .set(DutyFigure.HEAT_RATIO, 0.89, 0.035)
            .evidence());
  }

  @Test
  void aCoilShortOfRefrigerantSaysNothingOfTheAir() {
    assertClear(rule, approach(30, 0.8).set(DutyFigure.SUPERHEAT, 16, 0.5).evidence());
    assertClear(rule, approach(30, 0.8).set(DutyFigure.SUBCOOLING, 0.3, 0.4).evidence());
  }

  /**
   * A coil without superheat holds liquid to its end (physics), so it is not refrigerant it lacks.
   */
  @Test
  void littleSubcoolingBesideAFloodedCoilDoesNotSpareTheAir() {
    AtDuty blocked = approach(30, 0.8).set(DutyFigure.SUBCOOLING, 0.3, 0.4);
    onlyFlag(rule, blocked.set(DutyFigure.SUPERHEAT, 0.2, 0.6).evidence());
    assertClear(rule, blocked.set(DutyFigure.SUPERHEAT, 1.2, 0.9).evidence());
  }

  @Test
  void leavesAnIcedCoilInColdAirToFrosting() {
    assertClear(
        rule,
        approach(30, 0.8)
            .set(DutyFigure.EVAPORATING, 273.15 - 9, 0.4)
            .set(DutyFigure.AIR, 273.15 + 5, 0.1)
            .evidence());
    // A coil that ices in warm air has another trouble.
    onlyFlag(
        rule,
        approach(30, 0.8)
            .set(DutyFigure.EVAPORATING, 273.15 - 4, 0.4)
            .set(DutyFigure.AIR, 273.15 + 18, 0.1)
            .evidence());
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound().without(DutyFigure.STANDARD_APPROACH).evidence()))
        .isEqualTo("evaporating temperature or entering air not known while running steadily");
  }

  /** Speed-controlled heaters slow their fan with the compressor (common practice). */
  @Test
  void aSlowedFanIsNoWantOfAir() {
    AtDuty slow =
        AtDuty.sound()
            .set(DutyFigure.POWER_RATIO, 0.35, 0.01)
            .set(DutyFigure.COP_RATIO, 1.2, 0.05)
            .set(DutyFigure.LOAD, 0.38, 0.01)
            .set(DutyFigure.AIR_FLOW, 0.040e-3, 0.003e-3)
            .set(DutyFigure.EVAPORATOR_APPROACH, 7.1, 0.3)
            .set(DutyFigure.STANDARD_APPROACH, 17.2, 0.9);
    assertClear(rule, slow.evidence());
    onlyFlag(rule, slow.set(DutyFigure.POWER_RATIO, 0.9, 0.01).evidence());
    slow.set(DutyFigure.POWER_RATIO, 0.35, 0.01).set(DutyFigure.STANDARD_APPROACH, 40, 2);
    onlyFlag(rule, slow.set(DutyFigure.EVAPORATOR_APPROACH, 18, 0.3).evidence());
    // Less heat for the power is another trouble's; the coil lies as close to the air as any.
    slow.set(DutyFigure.COP_RATIO, 0.85, 0.04);
    onlyFlag(rule, slow.set(DutyFigure.EVAPORATOR_APPROACH, 13.5, 0.3).evidence());
    assertClear(rule, slow.set(DutyFigure.EVAPORATOR_APPROACH, 11.3, 0.3).evidence());
  }
}
