package heatwake.analysis.rule.refrigerant;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The probe's standard uncertainty is 10 kPa. */
class HighPressureTest {
  private final HighPressure rule = new HighPressure();

  private static Rig permitting(double pressurePa) {
    Heater typical = Rigs.typicalHeater();
    return Rigs.withHeater(
        new Heater(
            typical.label(),
            typical.refrigerant(),
            typical.flowMinM3PerS(),
            typical.flowMaxM3PerS(),
            typical.voltageV(),
            typical.currentMaxA(),
            typical.breakerA(),
            typical.restartDelayS(),
            OptionalDouble.of(pressurePa),
            typical.speed(),
            typical.ratings()));
  }

  private static RunBuilder at(double kPa) {
    return RunBuilder.run()
        .rig(permitting(4.2e6))
        .heatingAt(Channel.PRESSURE_DISCHARGE, kPa)
        .off(5)
        .circulating(5)
        .heating(30);
  }

  @Test
  void saysThePeakAndTheLimit() {
    Flag flag = onlyFlag(rule, readings(at(3950).recording()));
    assertThat(flag.evidence())
        .isEqualTo("High side 3.95 MPa, 94 % of the greatest permitted 4.20 MPa");
    assertThat(flag.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(flag.severity()).isEqualTo(Severity.ALARM);
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    // 90 % of 4200 kPa is 3780 kPa.
    assertClear(rule, readings(at(2300).recording()));
    assertClear(rule, readings(at(3780).recording()));
    assertClear(rule, readings(at(3808).recording()));
    onlyFlag(rule, readings(at(3815).recording()));
  }

  @Test
  void isSilentOnASpike() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .rig(permitting(4.2e6))
                .change(Channel.PRESSURE_DISCHARGE, (s, v) -> s % 600 < 40 ? 4100 : v)
                .off(5)
                .circulating(5)
                .heating(40)
                .recording()));
  }

  @Test
  void withoutStatedLimitGoesByCondensingTemperature() {
    // R-410A condenses at 60 Cel at 3.83 MPa absolute (dew; property tables, from memory).
    var findings =
        Analysis.of(
            RunBuilder.run()
                .heatingAt(Channel.PRESSURE_DISCHARGE, 4000)
                .off(5)
                .circulating(5)
                .heating(30)
                .recording());
    assertThat(findings.flags().toString()).contains("near the 65 °C");
    // 4.5 MPa gauge are some 68 Cel.
    findings =
        Analysis.of(
            RunBuilder.run()
                .heatingAt(Channel.PRESSURE_DISCHARGE, 4500)
                .off(5)
                .circulating(5)
                .heating(30)
                .recording());
    assertThat(findings.flags().toString()).contains("above the 65 °C");
  }

  /**
   * R-410A condenses at 60 Cel at 3.83 MPa absolute, 3.73 MPa gauge (dew; property tables, from
   * memory); 2.1 % a kelvin make that 60.9 Cel at 3.90 MPa. At the start of a run a probe may have
   * nothing to say yet.
   */
  @Test
  void hearsTheCondensingTemperatureThoughTheFirstReadingsAreLacking() {
    assertClear(rule, readings(silentAtFirst(3700)));
    assertThat(onlyFlag(rule, readings(silentAtFirst(3800))).evidence())
        .isEqualTo("Condensing at 60.8 °C, near the 65 °C at which high-pressure switches open");
  }

  private static Recording silentAtFirst(double kPa) {
    return RunBuilder.run()
        .heatingAt(Channel.PRESSURE_DISCHARGE, kPa)
        .change(Channel.PRESSURE_DISCHARGE, (s, v) -> s < 60 ? Double.NaN : v)
        .off(5)
        .circulating(5)
        .heating(30)
        .recording();
  }

  private static Recording stopping(int times) {
    // From 1.5 MPa towards 4.5 MPa: 4.1 MPa after 84 s, beyond 3.78 MPa for less than half a
    // minute.
    RunBuilder story =
        RunBuilder.run()
            .rig(permitting(4.2e6))
            .heatingAt(Channel.PRESSURE_DISCHARGE, 4500)
            .circulating(15);
    for (int i = 0; i < times; i++) {
      story.heating(1.4).circulating(6);
    }
    return story.recording();
  }

  @Test
  void aSwitchThatCutsThePeakShortShowsByStoppingThereAgainAndAgain() {
    assertClear(rule, readings(stopping(1)));
    assertThat(onlyFlag(rule, readings(stopping(4))).evidence())
        .matches(
            "High side 4\\.\\d\\d MPa as the compressor stopped, 4 times, 9\\d % of the greatest"
                + " permitted 4.20 MPa");
  }

  @Test
  void explainsTheShortCyclingAndSaysWhoseItIs() {
    // Liquid at 33 Cel lies far below condensing: more than its lag behind the climb.
    var findings = Analysis.of(stopping(5));
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("high-pressure");
    assertThat(findings.flags().get(0).evidence()).contains("Follows from it: short-cycling");
    assertThat(findings.verdict().side()).isNotIn(Side.CONTROL, Side.HEALTHY);
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .without(Channel.PRESSURE_DISCHARGE)
                        .off(5)
                        .heating(10)
                        .recording())))
        .isEqualTo("no pressure-discharge reading");
    assertThat(
            reason(
                rule, readings(RunBuilder.run().rig(Rigs.bare()).off(5).heating(10).recording())))
        .isEqualTo("neither the nameplate's greatest pressure nor heater.refrigerant in the rig");
  }
}
