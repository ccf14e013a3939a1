package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Low voltage beside overcurrent. P = U I cos phi: at the same power the current grows as the
 * voltage falls; a power above the plate's is not of the voltage's making.
 */
class LowVoltageTest {
  private static Flag during(String rule, Duty duty) {
    return new Flag(
        rule,
        Side.ELECTRICAL,
        Severity.WARNING,
        duty.startMs(),
        duty.endMs(),
        "evidence of " + rule,
        List.of(),
        "look at it",
        Set.of());
  }

  private static List<String> roots(AtDuty running) {
    Duty duty = running.duty();
    return rules(
        Consequences.fold(
            new FlagsOfRun(
                List.of(during("voltage-range", duty), during("overcurrent", duty)),
                List.of(duty),
                List.of(),
                Heater.UNKNOWN)));
  }

  private static List<String> rules(List<Flag> flags) {
    return flags.stream().map(Flag::rule).toList();
  }

  @Test
  void atTheNameplatesPowerItExplainsTheCurrent() {
    assertThat(roots(AtDuty.sound())).containsExactly("voltage-range");
  }

  @Test
  void ofAPowerThatIsNotKnownItMay() {
    assertThat(roots(AtDuty.sound().without(DutyFigure.POWER_RATIO)))
        .containsExactly("voltage-range");
  }

  @Test
  void aboveTheNameplatesPowerBothStand() {
    assertThat(roots(AtDuty.sound().set(DutyFigure.POWER_RATIO, 1.3, 0.03)))
        .containsExactly("voltage-range", "overcurrent");
  }

  @Test
  void butOnlyBeyondDoubt() {
    assertThat(roots(AtDuty.sound().set(DutyFigure.POWER_RATIO, 1.15, 0.03)))
        .containsExactly("voltage-range");
  }

  @Test
  void powerOfAnotherTimeSaysNothing() {
    AtDuty running = AtDuty.sound().set(DutyFigure.POWER_RATIO, 1.3, 0.03).then();
    Duty later = running.set(DutyFigure.POWER_RATIO, 1, 0.03).duty();
    assertThat(
            rules(
                Consequences.fold(
                    new FlagsOfRun(
                        List.of(during("voltage-range", later), during("overcurrent", later)),
                        running.evidence().duty(),
                        List.of(),
                        Heater.UNKNOWN))))
        .containsExactly("voltage-range");
  }

  /** I = P / (U cos phi) with cos phi 0.93; the typical rig allows 16 A and promises 2.75 kW. */
  private static List<String> found(double volt, double watt) {
    return rules(
        Analysis.of(
                RunBuilder.run()
                    .without(Channel.PRESSURE_DISCHARGE, Channel.PRESSURE_SUCTION)
                    .air(27)
                    .heatingAt(Channel.VOLTAGE, volt)
                    .heatingAt(Channel.POWER, watt)
                    .heatingAt(Channel.CURRENT, watt / volt / 0.93)
                    .off(5)
                    .circulating(20)
                    .heating(90)
                    .circulating(15)
                    .recording())
            .flags());
  }

  @Test
  void anInverterThatKeepsItsPowerOnALowSupplyIsNotItselfAtFault() {
    // 17.5 A at 169 V.
    assertThat(found(169, 2750)).contains("voltage-range").doesNotContain("overcurrent");
  }

  @Test
  void aStrainedMotorOnALowSupplyIsNamedBesideIt() {
    // 19.9 A at 200 V; 135 % of the power promised.
    assertThat(found(200, 3700)).contains("voltage-range", "overcurrent");
  }
}
