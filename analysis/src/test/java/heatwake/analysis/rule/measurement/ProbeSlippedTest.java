package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class ProbeSlippedTest {
  private final ProbeSlipped rule = new ProbeSlipped();

  /** From 40 min on the probe goes towards air within half an hour, by a share of the way. */
  private static RunBuilder.Change towards(double airCel, double share) {
    return (atS, cel) ->
        cel + share * Math.min(1, Math.max(0, (atS - 2400) / 1800)) * (airCel - cel);
  }

  private static RunBuilder night() {
    return RunBuilder.run().air(15).off(2).circulating(8).heating(10);
  }

  @Test
  void inletDriftsToTheAir() {
    RunBuilder run = night().change(Channel.WATER_IN, towards(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "water-in went from 26.0 °C to 19.4 °C, towards the air at 15.0 °C, while water-out"
                + " moved by 0.0 K");
  }

  @Test
  void outletDriftsToTheAirAndTheRiseIsGone() {
    RunBuilder run = night().change(Channel.WATER_OUT, towards(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void outletDriftsWhileWaterCirculates() {
    RunBuilder run =
        RunBuilder.run()
            .air(15)
            .circulating(40)
            .change(Channel.WATER_OUT, towards(15, 0.3))
            .circulating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void aPoolThatCoolsTakesBothPipesAlong() {
    RunBuilder run = RunBuilder.run().air(10).circulating(40);
    for (int k = 0; k < 20; k++) {
      run.pool(26 - 0.15 * k).circulating(10);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aHeaterThatLosesHeatIsNotAProbe() {
    RunBuilder run =
        night()
            .heating(30)
            .heatingAt(Channel.WATER_OUT, 0.1)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1500)
            .heatingAt(Channel.POWER, 1400)
            .heating(120);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aRiseThatFallsWithMoreFlowIsNotAProbe() {
    RunBuilder run =
        night()
            .heating(30)
            .heatingAt(Channel.WATER_OUT, 0.3)
            .heatingAt(Channel.FLOW_HEATER, 600)
            .heating(120);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aDriftUnderTheLimitIsClear() {
    RunBuilder run = night().change(Channel.WATER_IN, towards(15, 0.08)).heating(150);
    assertClear(rule, readings(run.recording()));
  }

  /** From 70 min on the probe lies half off its pipe. */
  private static RunBuilder.Change slipsAt70Min(double airCel, double share) {
    return (atS, cel) ->
        cel + share * Math.min(1, Math.max(0, (atS - 4200) / 300)) * (airCel - cel);
  }

  @Test
  void outletSlipsAndPartOfTheRiseIsLeftButTheCondensingTemperatureStays() {
    RunBuilder run = RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3);
    run.change(Channel.WATER_OUT, slipsAt70Min(20, 0.25)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "water-out went from 29.0 °C to 26.7 °C, towards the air at 20.0 °C, while water-in"
                + " moved by 0.0 K");
  }

  @Test
  void aRiseThatFallsWithTheCondensingTemperatureIsTheMachines() {
    RunBuilder run =
        RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3).heating(60);
    // A real fall by 2.2 K takes the condensing temperature along: 2300 to 2200 kPa is 1.9 K.
    run.heatingAt(Channel.WATER_OUT, 0.8).heatingAt(Channel.PRESSURE_DISCHARGE, 2200).heating(90);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void outletSlipsLateInARunInWhichThePoolWarms() {
    RunBuilder run = RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3);
    for (int k = 0; k < 36; k++) {
      run.pool(24 + 0.06 * k).heatingAt(Channel.PRESSURE_DISCHARGE, 2300 + 3 * k);
      if (k == 24) {
        run.change(Channel.WATER_OUT, (atS, cel) -> cel + 0.3 * (20 - cel));
      }
      run.heating(10);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void withoutAnAirProbeAnInletThatFallsAtEqualPowerIsToldByTheRise() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .off(2)
            .circulating(8);
    run.change(Channel.WATER_IN, slipsAt70Min(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("water-in went from 26.0 °C to 19.4 °C while water-out moved by 0.0 K");
  }

  @Test
  void needsAnAirTemperatureOrSomethingOfTheMachine() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER)
                        .heating(20)
                        .recording())))
        .isEqualTo("no air-in or air-ambient, power or pressure-discharge reading");
  }

  /**
   * A probe that hung at 22.0 Cel while the pool warmed, and reads rightly again at 25.5 Cel, has
   * stepped towards the air at 30 Cel; it sits on its pipe all the while.
   */
  @Test
  void aStuckProbeThatThawsHasNotSlipped() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .air(30)
            .pool(22)
            .noise(Channel.WATER_IN, 0.05)
            .noise(Channel.WATER_OUT, 0.05)
            .noise(Channel.POWER, 10)
            .resolution(Channel.WATER_IN, 0.01)
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> 22);
    for (int k = 0; k < 24; k++) {
      run.pool(22 + 3.5 * k / 24).heating(10);
    }
    assertClear(rule, readings(run.free(Channel.WATER_IN).pool(25.5).heating(90).recording()));
  }

  /** A probe that thaws and later slips has slipped. */
  @Test
  void aProbeThatSlipsAfterAStandstillHasSlipped() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .air(15)
            .noise(Channel.WATER_IN, 0.05)
            .noise(Channel.POWER, 10)
            .resolution(Channel.WATER_IN, 0.01)
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> 26)
            .heating(40)
            .free(Channel.WATER_IN)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> cel - 5)
            .heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-in went from 26.0 °C to 21.0 °C");
  }

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

  private static RunBuilder atRest() {
    return RunBuilder.run()
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
        .every(5)
        .air(14)
        .circulating(10)
        .heating(40)
        .circulating(20);
  }

  /** From 70 min on; the inlet still says the pool's 26 Cel. */
  @Test
  void anOutletThatFallsToTheAirWithinMinutesAtRestHasSlipped() {
    RunBuilder run = atRest().change(Channel.WATER_OUT, towardsWithin(4200, 240, 14));
    assertThat(onlyFlag(rule, readings(run.circulating(150).recording())).evidence())
        .isEqualTo(
            "water-out went from 26.0 °C to 14.0 °C, towards the air at 14.0 °C, within 20 min at"
                + " rest, while water-in moved by 0.0 K in over an hour; no pipe full of water cools"
                + " so");
  }

  /** The pump stops: a pipe full of water needs an hour, and both go. */
  @Test
  void pipesThatCoolTogetherAfterThePumpAreClear() {
    RunBuilder run =
        atRest()
            .change(Channel.WATER_OUT, towardsWithin(4200, 3600, 14))
            .change(Channel.WATER_IN, towardsWithin(4200, 5400, 14));
    assertClear(rule, readings(run.circulating(150).recording()));
  }

  /** Exponentially from a second on. */
  private static RunBuilder.Change towardsWithin(double fromS, double constantS, double airCel) {
    return (atS, cel) ->
        atS < fromS ? cel : airCel + (cel - airCel) * Math.exp((fromS - atS) / constantS);
  }
}
