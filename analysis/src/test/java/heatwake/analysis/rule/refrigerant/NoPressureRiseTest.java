package heatwake.analysis.rule.refrigerant;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Map;
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

  /** A pump on the heater's meter comes with the water and moves no pressure at all. */
  @Test
  void aDrawThatComesWithTheWaterAndMovesNothingMayBeThePumps() {
    var flag = onlyFlag(rule, readings(unmoved().off(5).heating(30).recording()));
    assertThat(flag.side()).isEqualTo(Side.UNDECIDED);
    assertThat(flag.causes().get(0)).contains("pool pump");
    // A heater waits for its water, and one that turns parts the pressures a little.
    assertThat(
            onlyFlag(rule, readings(unmoved().off(5).circulating(5).heating(30).recording()))
                .side())
        .isEqualTo(Side.REFRIGERANT);
    assertThat(onlyFlag(rule, readings(pumpingNothing().off(5).heating(30).recording())).side())
        .isEqualTo(Side.REFRIGERANT);
  }

  private static RunBuilder unmoved() {
    return pumpingNothing()
        .heatingAt(Channel.PRESSURE_DISCHARGE, 1510)
        .heatingAt(Channel.PRESSURE_SUCTION, 1500);
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

  /** Running backwards it compresses a little: the high side rises by a seventh, absolute. */
  @Test
  void aLittleRiseWithHardlyAnyHeatIsNone() {
    RunBuilder run = pumpingNothing().heatingAt(Channel.PRESSURE_DISCHARGE, 1770);
    Recording recording = run.off(5).circulating(5).heating(30).circulating(5).recording();
    assertThat(onlyFlag(rule, giving(recording, 1_500, 0.1)).evidence()).contains("1.77 MPa after");
    assertClear(rule, giving(recording, 6_000, 0.4));
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

  /**
   * R-410A stands at 1.37 MPa (absolute) at 18 Cel and 1.70 MPa at 26 Cel (interpolated by hand
   * from CoolProp 7.2.0, computed): water of 26 Cel lifts the high side by 24 % of its absolute
   * pressure over a coil at 18 Cel without a compressor.
   */
  @Test
  void whatWarmWaterLiftsIsNoLiftOfTheCompressor() {
    RunBuilder lukewarm = warmWater(1600, 1200);
    assertClear(rule, readings(lukewarm.recording()));
    var flag = onlyFlag(rule, giving(lukewarm.recording(), 400, 0.03));
    assertThat(flag.evidence())
        .matches(
            ".*after 5 min of running, low side 1\\.20 MPa; saturation at the entering water is"
                + " 1\\.(59|60) MPa; the compressor draws 1\\.3 kW");
    // More heat than the compressor draws is pumped; a low side pulled down is, too.
    assertClear(rule, giving(lukewarm.recording(), 2_000, 0.12));
    assertClear(rule, giving(warmWater(1600, 1000).recording(), 400, 0.03));
    // A sound condenser needs 5 K or so above the entering water: 14 % of the absolute pressure.
    assertClear(rule, giving(warmWater(1800, 1200).recording(), 400, 0.03));
  }

  private static RunBuilder warmWater(double highKpa, double lowKpa) {
    return RunBuilder.run()
        .air(18)
        .heatingAt(Channel.PRESSURE_DISCHARGE, highKpa)
        .heatingAt(Channel.PRESSURE_SUCTION, lowKpa)
        .heatingAt(Channel.WATER_OUT, 0.1)
        .heatingAt(Channel.POWER, 1300)
        .off(5)
        .circulating(5)
        .heating(30);
  }

  private static Evidence giving(Recording recording, double heatW, double ratio) {
    Evidence readings = readings(recording);
    Duty duty =
        new Duty(
            recording.endMs() - 1_200_000,
            recording.endMs(),
            Map.of(
                DutyFigure.HEAT, new Estimate(heatW, 150),
                DutyFigure.POWER, new Estimate(1300, 13),
                DutyFigure.HEAT_RATIO, new Estimate(ratio, 0.02)));
    return new Evidence(
        recording,
        readings.timeline(),
        readings.phases(),
        readings.phaseGrid(),
        readings.cycles(),
        readings.heat(),
        readings.zero(),
        readings.pool(),
        readings.steady(),
        readings.traces(),
        readings.load(),
        List.of(duty));
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
