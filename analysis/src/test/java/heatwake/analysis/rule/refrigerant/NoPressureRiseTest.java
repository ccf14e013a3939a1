package heatwake.analysis.rule.refrigerant;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class NoPressureRiseTest {
  private final NoPressureRise rule = new NoPressureRise();

  private static RunBuilder pumpingNothing() {
    return RunBuilder.run()
        .heatingAt(Channel.PRESSURE_DISCHARGE, 1600)
        .heatingAt(Channel.PRESSURE_SUCTION, 1450)
        .heatingAt(Channel.WATER_OUT, 0.2)
        .heatingAt(Channel.POWER, 1300);
  }

  @Test
  void saysWhatThePressuresDid() {
    var flag =
        onlyFlag(
            rule,
            readings(
                pumpingNothing()
                    .off(5)
                    .circulating(5)
                    .fan(0.5)
                    .heating(30)
                    .circulating(5)
                    .recording()));
    assertThat(flag.evidence())
        .matches(
            "High side 1\\.\\d\\d MPa before the start, 1\\.60 MPa after 5 min of running, low side"
                + " 1\\.\\d\\d MPa; the compressor draws 1\\.3 kW");
    assertThat(flag.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(flag.severity()).isEqualTo(Severity.ALARM);
  }

  @Test
  void countsTheStarts() {
    assertThat(
            onlyFlag(
                    rule,
                    readings(
                        pumpingNothing()
                            .off(5)
                            .circulating(5)
                            .heating(20)
                            .circulating(10)
                            .heating(20)
                            .circulating(5)
                            .recording()))
                .evidence())
        .endsWith("; the same at 2 starts");
  }

  @Test
  void isSilentWhenThePressureRises() {
    assertClear(
        rule,
        readings(RunBuilder.run().off(5).circulating(5).heating(30).circulating(5).recording()));
  }

  @Test
  void isSilentWhenTheWaterIsWarmedAllTheSame() {
    // Hot air over cold water: the standing pressure is as high as the running one.
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .heatingAt(Channel.PRESSURE_DISCHARGE, 1600)
                .heatingAt(Channel.PRESSURE_SUCTION, 1450)
                .off(5)
                .circulating(5)
                .heating(30)
                .circulating(5)
                .recording()));
  }

  @Test
  void needsTheHighSide() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .without(Channel.PRESSURE_DISCHARGE)
                        .off(5)
                        .circulating(5)
                        .heating(30)
                        .recording())))
        .isEqualTo("no pressure-discharge reading");
  }

  @Test
  void needsAStart() {
    assertThat(reason(rule, readings(RunBuilder.run().off(5).circulating(20).recording())))
        .isEqualTo(
            "no compressor start with five minutes of running and pressure readings around it");
  }
}
