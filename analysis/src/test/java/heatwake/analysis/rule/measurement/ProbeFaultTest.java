package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

class ProbeFaultTest {
  private final ProbeFault rule = new ProbeFault();

  @Test
  void anOpenProbeSaysMinus127() {
    RunBuilder run =
        RunBuilder.run()
            .heating(10)
            .change(Channel.WATER_OUT, (atS, cel) -> -127)
            .heating(5)
            .free(Channel.WATER_OUT)
            .heating(10);
    var flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.evidence())
        .isEqualTo("water-out read −127.0 °C (300 of 1500 readings); possible is −15 to 95 °C");
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
  }

  /**
   * A 1000 psi transmitter at full scale; R-410A's critical point is at 4.90 MPa (CoolProp 7.2).
   */
  @Test
  void aPressureBeyondTheCriticalPointIsNone() {
    RunBuilder run =
        RunBuilder.run()
            .heating(10)
            .set(Channel.PRESSURE_DISCHARGE, 6895)
            .heating(5)
            .free(Channel.PRESSURE_DISCHARGE)
            .heating(10);
    var evidence = readings(run.recording());
    assertThat(onlyFlag(rule, evidence).evidence())
        .startsWith("pressure-discharge read 6895 kPa")
        .endsWith("R-410A does not reach 5717 kPa in any heater");
    assertThat(evidence.timeline().of(Channel.PRESSURE_DISCHARGE)[700]).isNaN();
  }

  @Test
  void aSingleImpossibleReadingIsOnlyWorthKnowing() {
    RunBuilder run =
        RunBuilder.run().change(Channel.POWER, (atS, watt) -> atS == 700 ? 1e9 : watt).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).severity()).isEqualTo(Severity.INFO);
  }

  /** Data sheet of 1-Wire digital thermometers: 85 Cel is the power-on value. */
  @Test
  void eightyFiveOutOfTheBlue() {
    RunBuilder run =
        RunBuilder.run()
            .change(Channel.WATER_IN, (atS, cel) -> atS % 600 == 5 ? 85 : cel)
            .heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-in read 85.0 °C (6 of 3600 readings)");
  }

  @Test
  void eightyFiveForTenMinutesTakesNoPartInTheAnalysis() {
    RunBuilder run =
        RunBuilder.run()
            .circulating(20)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> 85)
            .heating(10)
            .free(Channel.WATER_IN)
            .heating(30);
    var evidence = readings(run.recording());
    var flag = onlyFlag(rule, evidence);
    assertThat(flag.evidence()).startsWith("water-in read 85.0 °C (600 of 7200 readings)");
    assertThat(flag.endMs() - flag.startMs()).isEqualTo(599_000);
    assertThat(evidence.timeline().of(Channel.WATER_IN)[5000]).isNaN();
  }

  @Test
  void aDischargeLineMayHonestlyRead85() {
    RunBuilder run = RunBuilder.run().heating(30).set(Channel.TEMP_DISCHARGE, 85).heating(30);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aLooseContactJumps() {
    RunBuilder run =
        RunBuilder.run()
            .change(Channel.AIR_IN, (atS, cel) -> atS % 500 == 5 ? cel + 15 : cel)
            .heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("air-in jumped by 15.0 K and back within seconds, 8 times");
  }

  @Test
  void whatTheLoopReports() {
    RunBuilder run =
        RunBuilder.run()
            .heating(5)
            .event(EventKind.SENSOR_FAULT, "pressure-discharge", "loop current 3.5 mA, sensor open")
            .heating(5);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("pressure-discharge: loop current 3.5 mA, sensor open");
  }

  @Test
  void anOrdinaryNightIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .noise(Channel.WATER_IN, 0.1)
                .off(10)
                .circulating(5)
                .heating(60)
                .off(20)
                .recording()));
  }

  /** Away from 30 min on for some minutes, by so many kelvin. */
  private static RunBuilder.Change away(double minutes, double kelvin) {
    return (atS, value) -> atS >= 1800 && atS < 1800 + 60 * minutes ? value + kelvin : value;
  }

  @Test
  void aProbeThatJumpsByTensOfKelvinForMinutesIsAFaultAndGivesNoHeat() {
    Flag flag =
        onlyFlag(
            rule,
            readings(
                RunBuilder.run()
                    .change(Channel.WATER_OUT, away(6, 30))
                    .circulating(15)
                    .heating(60)
                    .recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "water-out jumped from 27.6 °C to 57.6 °C and back (360 of 4500 readings) while the"
                + " water flowed on and water-in moved by 0.0 K");
  }

  @Test
  void whatAJumpingProbeReadsIsNotCountedAsHeat() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .every(5)
                .change(Channel.WATER_OUT, away(6, 30))
                .circulating(15)
                .heating(60)
                .recording());
    // 16.67 kW for an hour (IF97, see AnalysisTest); 30 K for 6 min would be 31 kWh more.
    Estimate heat = findings.heat().deliveredJ().orElseThrow();
    assertThat(heat.value() / 3.6e6).isCloseTo(16.67, within(heat.expanded() / 3.6e6));
    assertThat(findings.missing())
        .anyMatch(text -> text.startsWith("heat and COP: water-out read what cannot be between "));
  }

  @Test
  void aSlugOfWarmWaterAtAPumpStartIsReal() {
    RunBuilder.Change slug = (atS, value) -> atS >= 605 && atS < 660 ? value + 20 : value;
    RunBuilder run =
        RunBuilder.run().every(5).change(Channel.WATER_OUT, slug).off(10).circulating(30);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aSlugThatBothPipesSeeIsReal() {
    RunBuilder run =
        RunBuilder.run()
            .every(5)
            .change(Channel.WATER_IN, away(3, 15))
            .change(Channel.WATER_OUT, away(3, 15))
            .circulating(60);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void withoutAWitnessOfTheFlowHotWaterMayBeStandingWater() {
    RunBuilder run =
        RunBuilder.run()
            .every(5)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .change(Channel.WATER_OUT, away(6, 30))
            .circulating(15)
            .heating(60);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aHeaterThatStartsOnLittleWaterWarmsItByAsMuch() {
    RunBuilder run = RunBuilder.run().every(60).heatingAt(Channel.WATER_OUT, 14);
    run.circulating(20).heating(6).circulating(10).heating(6).circulating(20);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void tenKelvinIsTheLimit() {
    RunBuilder under =
        RunBuilder.run().every(5).change(Channel.WATER_IN, away(6, 9)).circulating(60);
    assertClear(rule, readings(under.recording()));
    RunBuilder over =
        RunBuilder.run().every(5).change(Channel.WATER_IN, away(6, -11)).circulating(60);
    assertThat(onlyFlag(rule, readings(over.recording())).channels())
        .containsExactly(Channel.WATER_IN);
  }
}
