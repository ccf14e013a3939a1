package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.EventKind;
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
        .isEqualTo("water-out read -127.0 °C (300 of 1500 readings); possible is -15 to 95 °C");
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
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
}
