package heatwake.analysis.rule.water;

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

class NoFlowTest {
  private final NoFlow rule = new NoFlow();

  private static RunBuilder heatingNight() {
    return RunBuilder.run().off(5).circulating(5).fan(0.5).heating(100);
  }

  private static RunBuilder waterAway(RunBuilder run) {
    return run.set(Channel.FLOW_HEATER, 0).set(Channel.FLOW_SWITCH, 0);
  }

  private static RunBuilder waterBack(RunBuilder run) {
    return run.free(Channel.FLOW_HEATER).free(Channel.FLOW_SWITCH).free(Channel.PUMP_ON);
  }

  @Test
  void saysHowLongTheCompressorRanDry() {
    RunBuilder run = waterAway(heatingNight()).heating(1.5);
    var flag = onlyFlag(rule, readings(waterBack(run).circulating(20).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Compressor ran for 90 s without water, flow-heater at 0.0 L/min; a heater should stop"
                + " within 30 s");
    assertThat(flag.severity()).isEqualTo(Severity.ALARM);
  }

  /**
   * A valve is shut and all water goes past the heater, whose switch sticks closed. That the pool's
   * water moves says nothing of the heater's.
   */
  @Test
  void allWaterPastTheHeaterIsNoWater() {
    RunBuilder run =
        heatingNight()
            .with(Channel.FLOW_TOTAL)
            .set(Channel.FLOW_HEATER, 0)
            .set(Channel.FLOW_SWITCH, 1)
            .set(Channel.PUMP_ON, 1)
            .heating(1.5);
    var flag = onlyFlag(rule, readings(waterBack(run).circulating(20).recording()));
    assertThat(flag.evidence()).startsWith("Compressor ran for 90 s without water");
  }

  /** Nothing says that a meter works which reads nothing from first to last. */
  @Test
  void aMeterThatNeverSawWaterIsOutvoted() {
    RunBuilder run = RunBuilder.run().set(Channel.FLOW_HEATER, 0).circulating(5).heating(100);
    assertClear(rule, readings(run.circulating(20).recording()));
  }

  /**
   * Until somebody comes: without water the high-pressure switch trips within minutes, and resets.
   */
  @Test
  void countsEveryRunWithoutWater() {
    RunBuilder run = waterAway(heatingNight()).heating(3);
    for (int k = 0; k < 4; k++) {
      run.off(4).heating(1.5);
    }
    var flag = onlyFlag(rule, readings(waterBack(run).circulating(20).recording()));
    assertThat(flag.evidence())
        .startsWith("Compressor ran for 3 min without water (5 times, longest given)");
    assertThat(flag.endMs() - flag.startMs()).isGreaterThan(24 * 60_000L);
  }

  @Test
  void aHeaterThatStopsWithinTheLimitIsClear() {
    RunBuilder run = waterAway(heatingNight().set(Channel.PUMP_ON, 0)).heating(0.4);
    assertClear(rule, readings(run.off(30).recording()));
  }

  @Test
  void waterLostThoughThePumpRuns() {
    var flag =
        onlyFlag(
            rule,
            readings(
                waterBack(waterAway(heatingNight().set(Channel.PUMP_ON, 1)).heating(0.1).off(20))
                    .circulating(5)
                    .heating(30)
                    .recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Water stopped while heating, for 20 min, though the pump ran, flow-heater at 0.0"
                + " L/min");
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
  }

  /** A timer, a backwash, a valve: one clean stop and restart accuses nobody. */
  @Test
  void oneLossOfWaterAfterACleanStopIsOnlyTold() {
    RunBuilder run = heatingNight().without(Channel.PUMP_ON);
    var flag = onlyFlag(rule, readings(lostOnce(run, 25).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Water stopped while heating, for 25 min, and came back, flow-heater at 0.0 L/min; the"
                + " heater stopped as it should, and why the water did is not told");
    assertThat(flag.isANote()).isTrue();
  }

  @Test
  void waterLostAgainAndAgain() {
    RunBuilder run = heatingNight().without(Channel.PUMP_ON);
    var flag = onlyFlag(rule, readings(lostOnce(lostOnce(run, 25), 10).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Water stopped while heating, for 25 min (2 times, longest given), and came back,"
                + " flow-heater at 0.0 L/min");
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
  }

  /** The same minutes of the day, a day apart: a timer. */
  @Test
  void lossesByTheClockAreOneCause() {
    RunBuilder run = heatingNight().without(Channel.PUMP_ON);
    var flag = onlyFlag(rule, readings(lostOnce(lostOnce(run, 25).heating(1380), 25).recording()));
    assertThat(flag.isANote()).isTrue();
  }

  private static RunBuilder pumpStops(RunBuilder run, int times, double minutes) {
    for (int k = 0; k < times; k++) {
      waterAway(run.set(Channel.PUMP_ON, 0)).heating(0.1).off(minutes);
      waterBack(run).circulating(0.5).fan(0.5).heating(38);
    }
    return run;
  }

  /** A motor protection that trips and resets: every three quarters of an hour. */
  @Test
  void aPumpThatCutsOutAgainAndAgain() {
    var flag = onlyFlag(rule, readings(pumpStops(heatingNight(), 4, 5).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "The pump stopped 4 times while the heater heated, for up to 5 min, and came back; water"
                + " 2.0 K below the set temperature; the heater stopped each time as it should");
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
    assertThat(flag.side()).isEqualTo(Side.WATER);
  }

  /** A timer rests the pump for a quarter of an hour; a person stops it twice. */
  @Test
  void aTimersPausesAndTwoStopsAreClear() {
    assertClear(rule, readings(pumpStops(heatingNight(), 5, 15).recording()));
    assertClear(rule, readings(pumpStops(heatingNight(), 2, 5).recording()));
  }

  /** The control stops the pump with the heater once the pool is warm. */
  @Test
  void aPumpThatStopsByAWarmPoolIsClear() {
    assertClear(rule, readings(pumpStops(heatingNight().pool(28), 4, 5).recording()));
  }

  /** Pump off, valve to waste, pump on, pump off, valve back, pump on: a backwash. */
  @Test
  void aBackwashIsNoLostPrime() {
    RunBuilder run = waterAway(heatingNight().set(Channel.PUMP_ON, 0)).heating(0.1).off(1);
    run.set(Channel.PUMP_ON, 1).off(5).set(Channel.PUMP_ON, 0).off(0.5).set(Channel.PUMP_ON, 1);
    assertClear(rule, readings(waterBack(run.off(0.5)).circulating(5).heating(30).recording()));
  }

  @Test
  void aPumpThatDoesNotComeBackToItsWaterIsNoBackwash() {
    RunBuilder run = waterAway(heatingNight().set(Channel.PUMP_ON, 0)).heating(0.1).off(1);
    var flag =
        onlyFlag(
            rule,
            readings(
                waterBack(run.set(Channel.PUMP_ON, 1).off(40))
                    .circulating(5)
                    .heating(30)
                    .recording()));
    assertThat(flag.evidence()).contains("though the pump ran");
    assertThat(flag.side()).isEqualTo(Side.WATER);
  }

  /** A valve to waste leaves the pump its water; a lost prime does not. */
  @Test
  void aPumpThatMovesNoWaterAtAllIsToldSoon() {
    RunBuilder night =
        RunBuilder.run().with(Channel.FLOW_TOTAL).off(5).circulating(5).fan(0.5).heating(100);
    RunBuilder waste = waterAway(night.set(Channel.PUMP_ON, 1).set(Channel.FLOW_TOTAL, 240));
    assertThat(
            onlyFlag(rule, readings(lost(waste, 7).free(Channel.FLOW_TOTAL).recording())).isANote())
        .isTrue();
    night = RunBuilder.run().with(Channel.FLOW_TOTAL).off(5).circulating(5).fan(0.5).heating(100);
    var flag =
        onlyFlag(rule, readings(lost(waterAway(night.set(Channel.PUMP_ON, 1)), 7).recording()));
    assertThat(flag.isANote()).isFalse();
    assertThat(flag.evidence()).contains("for 7 min, though the pump ran");
  }

  /** For half a minute nothing is read: that brings no water back. */
  @Test
  void aMomentWithoutReadingsEndsNoLoss() {
    RunBuilder run = RunBuilder.run().every(10).only(Channel.POWER, Channel.FLOW_HEATER);
    run.off(5).circulating(5).fan(0.5).heating(100);
    run.set(Channel.FLOW_HEATER, 0).heating(0.1).off(4).silent(Channel.FLOW_HEATER).off(0.7);
    run.free(Channel.FLOW_HEATER).off(115).circulating(5).heating(30);
    assertClear(rule, readings(run.recording()));
  }

  private static RunBuilder lost(RunBuilder run, double minutes) {
    return waterBack(run.heating(0.1).off(minutes)).circulating(5).heating(30);
  }

  private static RunBuilder lostOnce(RunBuilder run, double minutes) {
    return waterBack(waterAway(run).heating(0.1).off(minutes)).circulating(5).heating(30);
  }

  @Test
  void oneShortTestAtStartUpIsClear() {
    RunBuilder run =
        RunBuilder.run().without(Channel.PUMP_ON).off(3).circulating(5).fan(0.5).heating(20);
    assertClear(
        rule,
        readings(
            waterBack(waterAway(run).heating(0.1).off(3)).circulating(5).heating(30).recording()));
  }

  /**
   * The flow switch hangs closed, but pump and filter's gauge stand. The compressor trips and tries
   * again in the hot water that stands in it, where one rise is much like the one before.
   */
  @Test
  void triesInHotStandingWaterAreNoHeatThatGoesOn() {
    RunBuilder run =
        RunBuilder.run()
            .with(Channel.PRESSURE_FILTER)
            .without(Channel.FLOW_HEATER)
            .circulating(5)
            .heating(100)
            .set(Channel.PRESSURE_FILTER, 0)
            .set(Channel.PUMP_ON, 0)
            .set(Channel.WATER_OUT, 40)
            .heating(4)
            .circulating(4)
            .set(Channel.WATER_OUT, 42)
            .heating(7);
    var flag = onlyFlag(rule, readings(run.circulating(20).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Compressor ran for 7 min without water (2 times, longest given), though the flow switch"
                + " says that it flows; a heater should stop within 30 s");
  }

  @Test
  void theTimerSwitchingThePumpOffIsNotItsBusiness() {
    assertClear(rule, readings(heatingNight().heating(0.1).off(300).recording()));
  }

  @Test
  void aDeadFlowMeterIsNoLossOfWater() {
    RunBuilder run =
        heatingNight().without(Channel.FLOW_SWITCH, Channel.PUMP_ON).set(Channel.FLOW_HEATER, 0);
    assertClear(rule, readings(run.heating(60).recording()));
  }

  @Test
  void allProbesTogetherAreBelievedThoughTheRiseGoesOn() {
    RunBuilder run = waterAway(heatingNight()).set(Channel.PUMP_ON, 0);
    var flag = onlyFlag(rule, readings(run.heating(10).off(20).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Compressor ran for 10 min without water, flow-heater at 0.0 L/min; a heater should"
                + " stop within 30 s; the water's rise shows nothing of it, so check these readings"
                + " too");
  }

  @Test
  void aFlowMeterThatTheSwitchContradictsIsNotBelieved() {
    RunBuilder run = heatingNight().without(Channel.PUMP_ON).set(Channel.FLOW_HEATER, 0);
    assertClear(rule, readings(run.heating(10).recording()));
  }

  @Test
  void theFlagLastsFromTheCompressorsStartToItsStop() {
    RunBuilder run = waterAway(RunBuilder.run()).set(Channel.PUMP_ON, 0).off(15);
    long started = run.nowMs();
    run.heating(20);
    long stopped = run.nowMs();
    var flag = onlyFlag(rule, readings(run.off(10).recording()));
    assertThat(flag.startMs()).isBetween(started - 5_000, started + 15_000);
    assertThat(flag.endMs()).isBetween(stopped - 15_000, stopped + 15_000);
  }

  @Test
  void pumpRunsButNothingMovesAndHeatIsCalledFor() {
    RunBuilder run = RunBuilder.run().set(Channel.PUMP_ON, 1);
    var flag = onlyFlag(rule, readings(run.off(60).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "No water for 60 min, though the pump ran, flow-heater at 0.0 L/min; water 2.0 K below"
                + " the set temperature");
  }

  @Test
  void needsAWaterReading() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .only(Channel.POWER, Channel.WATER_IN)
                        .heating(20)
                        .recording())))
        .isEqualTo("no flow-heater, flow-total, flow-switch or pump-on reading");
  }
}
