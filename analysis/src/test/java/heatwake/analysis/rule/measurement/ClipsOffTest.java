package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.measurement.SlippingClips.night;
import static heatwake.analysis.rule.measurement.SlippingClips.slipsAt70Min;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** Clips that are taken off their pipe for a while, or slip in a short visit. */
class ClipsOffTest {
  private final ProbeSlipped rule = new ProbeSlipped();

  /** Between two minutes the probe hangs in the air. */
  private static RunBuilder.Change off(double fromMin, double toMin, double airCel) {
    return (atS, cel) -> atS > fromMin * 60 && atS < toMin * 60 ? airCel : cel;
  }

  @Test
  void aClipTakenOffForMinutesIsToldWithItsTimeOnly() {
    RunBuilder run = night().change(Channel.WATER_OUT, off(60, 68, 18)).heating(150);
    var flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.WATER_OUT);
    assertThat(flag.evidence())
        .startsWith("water-out went from 27.6 °C")
        .contains(" to 18.0 °C and back after 12 min while water-in stayed at 26.0 °C");
    assertThat(flag.endMs() - flag.startMs()).isBetween(11 * 60_000L, 13 * 60_000L);
  }

  @Test
  void anInletClipTakenOffForMinutes() {
    RunBuilder run = night().change(Channel.WATER_IN, off(60, 75, 18)).heating(150);
    var flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.WATER_IN);
    assertThat(flag.endMs() - flag.startMs()).isBetween(18 * 60_000L, 20 * 60_000L);
  }

  /** No air is read, and only power tells that the heater runs on. */
  @Test
  void anOutletThatFallsFarBelowTheInletHasSlippedWithoutAnAirProbe() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .off(2)
            .circulating(8);
    run.change(Channel.WATER_OUT, slipsAt70Min(15, 0.8)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-out went from 27.6 °C")
        .endsWith(
            "while water-in stayed at 26.0 °C and the heater ran on; no heat makes such a"
                + " rise");
  }

  @Test
  void aDefrostIsNoClipTakenOff() {
    RunBuilder run = night().air(3).heating(60).defrost(6).heating(60).defrost(6).heating(60);
    assertClear(rule, readings(run.recording()));
  }

  /** Water that stands in the heater grows hot; nobody took a clip off. */
  @Test
  void waterThatGrowsHotWithoutAMeterIsNoClipInTheSun() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
            .off(2)
            .circulating(8)
            .heating(60)
            .change(Channel.WATER_OUT, off(60, 66, 55));
    assertClear(rule, readings(run.heating(60).recording()));
  }

  /** A visit: the outlet slips after four minutes of settled rise and stays off to the end. */
  @Test
  void anOutletThatSlipsInAShortVisitIsTold() {
    RunBuilder run =
        RunBuilder.run()
            .air(8)
            .circulating(8)
            .heating(9.5)
            .change(Channel.WATER_OUT, off(17.5, 99, 9));
    var flag = onlyFlag(rule, readings(run.heating(15).recording()));
    assertThat(flag.channels()).containsExactly(Channel.WATER_OUT);
    assertThat(flag.evidence())
        .startsWith("water-out went from 27.6 °C to 9.0 °C while water-in stayed at 26.0 °C");
  }

  /** So soon nothing is known of a usual rise. */
  @Test
  void anOutletThatNeverShowedASettledRiseIsLeftAlone() {
    RunBuilder run =
        RunBuilder.run().air(8).circulating(8).heating(6).change(Channel.WATER_OUT, off(14, 99, 9));
    assertClear(rule, readings(run.heating(15).recording()));
  }

  @Test
  void aDefrostOfAShortVisitIsNoSlip() {
    RunBuilder run = RunBuilder.run().air(2).circulating(8).heating(12).defrost(5).heating(10);
    assertClear(rule, readings(run.recording()));
  }

  /** At the compressor's full speed a defrost may draw what heating does; the high side tells. */
  @Test
  void aDefrostAtFullPowerIsNoSlip() {
    RunBuilder run = RunBuilder.run().air(2).circulating(8).heating(12);
    run.set(Channel.POWER, 2700).set(Channel.CURRENT, 12.2).set(Channel.VOLTAGE, 230).defrost(5);
    assertClear(
        rule,
        readings(
            run.free(Channel.POWER)
                .free(Channel.CURRENT)
                .free(Channel.VOLTAGE)
                .heating(10)
                .recording()));
  }

  @Test
  void exchangedProbesOfAShortVisitHaveNotSlipped() {
    RunBuilder run =
        RunBuilder.run()
            .air(8)
            .circulating(8)
            .change(Channel.WATER_OUT, (atS, cel) -> 26)
            .change(Channel.WATER_IN, (atS, cel) -> atS < 500 ? 26 : 27.6);
    assertClear(rule, readings(run.heating(25).recording()));
  }

  private static RunBuilder visit() {
    return RunBuilder.run().circulating(8).heating(12);
  }

  /** For 70 s the clip hangs in the air; its lag is half a minute. */
  private static RunBuilder.Change reclipped(double fromMin, double airCel) {
    return (atS, cel) -> {
      double s = atS - fromMin * 60;
      double gone = 1 - Math.exp(-Math.min(70, Math.max(0, s)) / 30);
      double left = gone * Math.exp(-Math.max(0, s - 70) / 30);
      return cel + (s < 70 ? gone : left) * (airCel - cel);
    };
  }

  @Test
  void aClipTakenOffForAMinuteIsWorthAWordOnly() {
    RunBuilder run = visit().air(10).change(Channel.WATER_OUT, reclipped(25, 22)).heating(20);
    var flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.WATER_OUT);
    assertThat(flag.severity()).isEqualTo(Severity.INFO);
    assertThat(flag.endMs() - flag.startMs()).isBetween(100_000L, 300_000L);
    assertThat(flag.evidence())
        .contains(" and was back within ")
        .endsWith("while water-in stayed at 26.0 °C and nothing else of the heater moved");
  }

  /**
   * The draw falls by a sixth meanwhile, the suction side rises by as much: a short defrost at part
   * speed, though neither is far from its mean.
   */
  @Test
  void aDefrostThatMovesTheDrawALittleIsNoClip() {
    RunBuilder run =
        visit()
            .air(4)
            .change(Channel.WATER_OUT, reclipped(25, 25.5))
            .change(Channel.POWER, (atS, watts) -> watts * (1 - 0.17 * meanwhile(atS)))
            .change(Channel.PRESSURE_SUCTION, (atS, kPa) -> kPa * (1 + 0.17 * meanwhile(atS)));
    assertClear(rule, readings(run.heating(20).recording()));
  }

  private static double meanwhile(double atS) {
    return atS > 25 * 60 && atS < 25 * 60 + 110 ? 1 : 0;
  }

  @Test
  void anInletClipTakenOffForAMinute() {
    RunBuilder run =
        visit().air(10).without(Channel.FLOW_HEATER).change(Channel.WATER_IN, reclipped(25, 22));
    assertThat(onlyFlag(rule, readings(run.heating(20).recording())).channels())
        .containsExactly(Channel.WATER_IN);
  }

  /** More water for a minute leaves less rise; the meter shows it, and so it is the water's. */
  @Test
  void aValveOpenedForAMinuteIsNoClip() {
    RunBuilder run = visit().heatingAt(Channel.WATER_OUT, 3).heating(10);
    run.heatingAt(Channel.WATER_OUT, 1).heatingAt(Channel.FLOW_HEATER, 450).heating(2);
    run.heatingAt(Channel.WATER_OUT, 3).heatingAt(Channel.FLOW_HEATER, 150).heating(20);
    assertClear(rule, readings(run.recording()));
  }

  /** Where no meter tells, less rise may be more water. */
  @Test
  void withoutAMeterLessRiseForAMinuteIsLeftAlone() {
    RunBuilder run =
        visit().without(Channel.FLOW_HEATER).heatingAt(Channel.WATER_OUT, 3).heating(10);
    run.heatingAt(Channel.WATER_OUT, 1).heating(2).heatingAt(Channel.WATER_OUT, 3).heating(20);
    assertClear(rule, readings(run.recording()));
  }

  /** A short defrost whose draw nobody measures closely: only power is read, and it is cold. */
  @Test
  void withoutAPressureACoolingOfAMinuteInTheColdMayBeADefrost() {
    RunBuilder run =
        RunBuilder.run()
            .only(
                Channel.WATER_IN,
                Channel.WATER_OUT,
                Channel.POWER,
                Channel.AIR_IN,
                Channel.FLOW_HEATER)
            .air(2)
            .circulating(8)
            .heating(12)
            .set(Channel.POWER, 2700)
            .change(Channel.WATER_OUT, reclipped(25, 22));
    assertClear(rule, readings(run.heating(20).recording()));
  }
}
