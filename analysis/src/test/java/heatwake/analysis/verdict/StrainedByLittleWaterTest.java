package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.site.Heater;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Overcurrent beside too little water. Water that passes slowly leaves hotter, the circuit
 * condenses above it at a usual approach, and the compressor draws 2 to 3 % more for each kelvin
 * (common practice).
 */
class StrainedByLittleWaterTest {
  private static Flag during(String rule, Side side, Severity severity, Duty duty) {
    return new Flag(
        rule,
        side,
        severity,
        duty.startMs(),
        duty.endMs(),
        "evidence of " + rule,
        List.of(),
        "look at it",
        Set.of());
  }

  private static List<String> roots(AtDuty running) {
    Duty duty = running.duty();
    return Consequences.fold(
            new FlagsOfRun(
                List.of(
                    during("overcurrent", Side.ELECTRICAL, Severity.ALARM, duty),
                    during("low-heater-flow", Side.WATER, Severity.WARNING, duty)),
                List.of(duty),
                List.of(),
                Heater.UNKNOWN))
        .stream()
        .map(Flag::rule)
        .toList();
  }

  /** Ten kelvin of rise where three are usual: some 7 K of head, a fifth of the power. */
  private static AtDuty hotLeavingWater(double powerRatio, double unexplained) {
    return AtDuty.sound()
        .set(DutyFigure.RISE, 10, 0.1)
        .set(DutyFigure.CONDENSER_APPROACH, 7.5, 0.3)
        .set(DutyFigure.POWER_RATIO, powerRatio, 0.03)
        .set(DutyFigure.UNEXPLAINED_POWER_RATIO, unexplained, 0.03);
  }

  @Test
  void aHeadThatExplainsThePowerExplainsTheCurrent() {
    assertThat(roots(hotLeavingWater(1.34, 0.97))).containsExactly("low-heater-flow");
  }

  @Test
  void moreThanTheHeadExplainsIsTheMotorsOwn() {
    assertThat(roots(hotLeavingWater(1.6, 1.23))).containsExactly("overcurrent", "low-heater-flow");
  }

  /** At the nameplate's power the current has another cause, such as the supply's voltage. */
  @Test
  void aCurrentWithoutMorePowerIsNoneOfTheWaters() {
    assertThat(roots(hotLeavingWater(1.0, 0.63))).containsExactly("overcurrent", "low-heater-flow");
  }
}
