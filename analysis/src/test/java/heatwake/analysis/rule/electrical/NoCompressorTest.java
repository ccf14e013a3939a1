package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoCompressorTest {
  private final NoCompressor rule = new NoCompressor();

  @Test
  void saysHowLongTheFanRanAlone() {
    var flag =
        onlyFlag(rule, readings(RunBuilder.run().off(10).circulating(5).fan(30).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Fan ran without the compressor starting for 30 min (150 W), water 2.0 K below the set"
                + " temperature");
  }

  @Test
  void countsTries() {
    RunBuilder run = RunBuilder.run().off(5).circulating(5);
    for (int k = 0; k < 4; k++) {
      run.fan(2).circulating(5);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("3 times the fan ran without the compressor starting, last for 2 min");
  }

  @Test
  void aMotorThatHumsAndTripsIsNoCompressorThatRuns() {
    // A motor that does not turn trips within some ten seconds, drawing five to seven times its
    // rated current; common practice.
    var findings =
        Analysis.of(
            RunBuilder.run()
                .every(10)
                .change(Channel.POWER, (s, v) -> v > 100 && s % 180 < 20 ? 9000 : v)
                .off(10)
                .circulating(5)
                .fan(90)
                .recording());
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("no-compressor");
    assertThat(findings.flags().get(0).evidence())
        .startsWith("Fan ran without the compressor starting for 90 min");
  }

  @Test
  void theFlanksOfATryAreNoFan() {
    var findings =
        Analysis.of(
            RunBuilder.run()
                .every(5)
                .change(
                    Channel.POWER,
                    (s, v) -> v < 100 ? v : s % 180 < 5 ? 4000 : s % 180 < 10 ? 400 : 70)
                .off(10)
                .circulating(5)
                .fan(90)
                .recording());
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("no-compressor");
  }

  /**
   * A stalled motor draws four times its rated current and more until its protector opens within
   * some ten seconds (common practice): 8 kW here where 2.7 kW are usual. The pool is at its set
   * temperature as far as the probes tell, yet the control tries.
   */
  private static RunBuilder triesAfterARun(
      RunBuilder story, double everyS, double fanMin, double restMin) {
    RunBuilder run =
        story
            .every(everyS)
            .pool(27.8)
            .noise(Channel.POWER, 5)
            .circulating(10)
            .heating(120)
            .change(Channel.POWER, (s, v) -> s % 187 < 6 ? 8000 : v);
    return fanMin > 0 ? run.fan(fanMin) : run.circulating(restMin);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 5, 10, 30})
  void triesShowThatHeatIsCalledFor(double everyS) {
    var flags = Analysis.of(triesAfterARun(RunBuilder.run(), everyS, 180, 0).recording()).flags();
    assertThat(flags).extracting(Flag::rule).containsExactly("no-compressor");
    assertThat(flags.get(0).evidence())
        .matches(
            "Fan ran without the compressor starting for .*; \\d+ tries drew up to 80\\d\\d W.*");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 5, 10})
  void triesFromRestWithoutAFanAreSeen(double everyS) {
    var flags = Analysis.of(triesAfterARun(RunBuilder.run(), everyS, 0, 180).recording()).flags();
    assertThat(flags).extracting(Flag::rule).containsExactly("no-compressor");
    assertThat(flags.get(0).evidence()).contains("tries drew up to 80");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 10, 30})
  void powerAloneTellsThem(double everyS) {
    var flags =
        Analysis.of(
                triesAfterARun(RunBuilder.run().only(Channel.POWER), everyS, 0, 180).recording())
            .flags();
    assertThat(flags).extracting(Flag::rule).containsExactly("no-compressor");
  }

  /** Two inrushes are no tries in vain, nor is what a pump on the same meter draws. */
  @Test
  void fewOrSmallDrawsAtRestAreClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .circulating(10)
                .heating(120)
                .change(Channel.POWER, (s, v) -> s % 6000 < 6 ? 8000 : v)
                .circulating(180)
                .recording()));
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .circulating(10)
                .heating(120)
                .change(Channel.POWER, (s, v) -> s % 300 < 6 ? 1500 : v)
                .circulating(180)
                .recording()));
  }

  /** The current of a three-phase motor of 4 A that stalls at 22 A hides no fan of 0.4 A. */
  @Test
  void theStalledMotorsCurrentIsNotTakenForTheRunningOnes() {
    var flags =
        Analysis.of(
                RunBuilder.run()
                    .only(Channel.CURRENT)
                    .heatingAt(Channel.CURRENT, 4)
                    .circulating(10)
                    .heating(60)
                    .circulating(10)
                    .change(Channel.CURRENT, (s, v) -> s % 187 < 6 ? 22 : v)
                    .fan(180)
                    .recording())
            .flags();
    assertThat(flags).extracting(Flag::rule).containsExactly("no-compressor");
  }

  /**
   * A crankcase heater takes 40 to 80 W and follows the air; differentials of thermostats are 0.3
   * to 2 K (common practice): the pool 1.1 K below its set temperature may call for nothing.
   */
  @ParameterizedTest
  @ValueSource(doubles = {45, 68, 79})
  void aCrankcaseHeaterIsNoFan(double heaterW) {
    assertClear(rule, readings(smallDraw(26.9, 20, heaterW).recording()));
  }

  /** The same by a clamp alone, which reads more than the power tells. */
  @Test
  void norIsItByItsCurrent() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .only(Channel.CURRENT, Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER)
                .pool(26.9)
                .circulating(20)
                .change(Channel.CURRENT, (s, v) -> 0.55)
                .circulating(200)
                .recording()));
  }

  /**
   * Three kelvin are more than any thermostat waits for. The rest is seen for four minutes only.
   */
  @Test
  void aSmallDrawAndACertainCallAreNoCompressor() {
    assertThat(onlyFlag(rule, readings(smallDraw(25, 4, 60).recording())).evidence())
        .isEqualTo(
            "The compressor did not start in 3.3 h (60 W: a small fan or a crankcase heater), water"
                + " 3.0 K below the set temperature");
  }

  /** A timer, or a supplier's pause, keeps it away, and its crankcase is warmed meanwhile. */
  @Test
  void aHeaterThatRanBeforeMayBeKeptAway() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .pool(25)
                .circulating(10)
                .heating(60)
                .circulating(20)
                .change(Channel.POWER, (s, v) -> 68)
                .circulating(200)
                .recording()));
  }

  /**
   * Two kelvin may lie within a thermostat's differential (0.3 to 2 K: common practice), but a draw
   * that comes on in warm air, out of a rest with the supply on, is no crankcase heater's.
   */
  @Test
  void aSmallDrawOutOfAQuietRestInWarmAirIsAFan() {
    assertThat(onlyFlag(rule, readings(smallDraw(26, 10, 60).recording())).evidence())
        .isEqualTo(
            "The compressor did not start in 3.3 h (60 W: a small fan or a crankcase heater), water"
                + " 2.0 K below the set temperature");
  }

  /** In air that may have closed its thermostat, or with no supply before, it may be one. */
  @Test
  void aSmallDrawThatAirOrSupplyMayHaveSwitchedOnIsClear() {
    assertClear(rule, readings(smallDraw(RunBuilder.run().air(16), 26, 10, 60).recording()));
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .pool(26)
                .change(Channel.POWER, (s, v) -> 0)
                .circulating(10)
                .change(Channel.POWER, (s, v) -> 60)
                .circulating(200)
                .recording()));
  }

  /** Too coarse a log shows no lead, but what the stop leaves came with the start. */
  @Test
  void aSmallFanLeftByTheStopThatCameWithTheStartIsNamed() {
    assertThat(onlyFlag(rule, readings(leftByTheStop(26).recording())).evidence())
        .isEqualTo(
            "The compressor did not start in 3.3 h (70 W: a small fan or a crankcase heater), water"
                + " 2.0 K below the set temperature");
  }

  /** The pool within the uncertainty of the set temperature, or colder air after the stop. */
  @Test
  void theSameByAWarmPoolOrInColderAirIsClear() {
    assertClear(rule, readings(leftByTheStop(27.6).recording()));
    assertClear(
        rule,
        readings(
            leftByTheStop(
                    RunBuilder.run().change(Channel.AIR_IN, (s, v) -> s > 130 * 60 ? 17 : v), 26)
                .recording()));
  }

  /** A small lamp, lit while the compressor ran, shows as a step beside it. */
  @Test
  void aLampThatCameOnBesideTheCompressorIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .pool(26)
                .change(Channel.POWER, (s, v) -> s > 70 * 60 ? v + 60 : v)
                .circulating(10)
                .heating(120)
                .circulating(200)
                .recording()));
  }

  private static RunBuilder leftByTheStop(double poolCel) {
    return leftByTheStop(RunBuilder.run(), poolCel);
  }

  private static RunBuilder leftByTheStop(RunBuilder run, double poolCel) {
    return run.every(10)
        .pool(poolCel)
        .circulating(10)
        .heating(120)
        .change(Channel.POWER, (s, v) -> v < 200 ? 70 : v)
        .circulating(200);
  }

  private static RunBuilder smallDraw(double poolCel, double restMin, double watts) {
    return smallDraw(RunBuilder.run(), poolCel, restMin, watts);
  }

  private static RunBuilder smallDraw(
      RunBuilder run, double poolCel, double restMin, double watts) {
    return run.every(10)
        .pool(poolCel)
        .circulating(restMin)
        .change(Channel.POWER, (s, v) -> watts)
        .circulating(200);
  }

  /** The nameplate wants 90 L/min. */
  @Test
  void tooLittleWaterHoldsTheHeaterBack() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .set(Channel.FLOW_HEATER, 45)
                .off(10)
                .circulating(5)
                .fan(30)
                .recording()));
  }

  @Test
  void aDelayBeforeTheStartIsClear() {
    assertClear(rule, readings(RunBuilder.run().circulating(5).fan(7.5).heating(30).recording()));
  }

  @Test
  void aFanThatRunsOnAfterAStopIsClear() {
    RunBuilder run = RunBuilder.run().circulating(5);
    for (int k = 0; k < 4; k++) {
      run.heating(60).fan(3).circulating(30);
    }
    assertClear(rule, readings(run.recording()));
  }

  /**
   * A compressor that now and then does start: after each run the fan comes on again when the
   * restart delay is over, and an hour and more goes by.
   */
  @ParameterizedTest
  @ValueSource(doubles = {5, 60})
  void aFanThatWaitsForAnHourAfterEachRunIsNamed(double everyS) {
    RunBuilder run = RunBuilder.run().every(everyS).pool(26).circulating(10);
    for (int k = 0; k < 3; k++) {
      run.heating(60).circulating(4).fan(97);
    }
    assertThat(onlyFlag(rule, readings(run.heating(60).recording())).evidence())
        .matches(
            "3 times the fan ran without the compressor starting, last for 9[78] min \\(1[45]\\d"
                + " W\\), water 2.0 K below the set temperature");
  }

  /** The fan is known by its lead before the start; it stays on when the compressor has died. */
  @Test
  void theOwnFanThatStaysOnIsNamedThoughTheCallIsSmall() {
    assertThat(onlyFlag(rule, readings(diesAfterARun(27.4).fan(300).recording())).evidence())
        .isEqualTo(
            "Fan ran without the compressor starting for 5.0 h (150 W), water 0.6 K below the set"
                + " temperature");
  }

  /** Its pool is warm as far as the probes tell. */
  @Test
  void theOwnFanByAWarmPoolIsClear() {
    assertClear(rule, readings(diesAfterARun(27.9).fan(300).recording()));
  }

  private static RunBuilder diesAfterARun(double poolCel) {
    return RunBuilder.run().every(10).pool(poolCel).circulating(10).fan(1).heating(120);
  }

  /**
   * The fan of a small heater draws no more than a crankcase heater, but it led the start out of a
   * rest in which that would have been on. A contactor drops out, and the control tries on.
   */
  @Test
  void aSmallFanThatLedTheStartIsKnown() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .pool(26)
            .change(Channel.POWER, (s, v) -> v < 200 && v > 100 ? 70 : v)
            .circulating(10)
            .fan(1)
            .heating(120)
            .circulating(5)
            .fan(200);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "Fan ran without the compressor starting for 3.3 h (70 W), water 2.0 K below the set"
                + " temperature");
  }

  /** The same draw in the rest before the start too: a crankcase heater, and no fan seen. */
  @Test
  void aSmallDrawInTheRestBeforeTheStartIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .pool(26)
                .change(Channel.POWER, (s, v) -> v < 200 ? Math.max(v, 70) : v)
                .circulating(10)
                .heating(120)
                .circulating(200)
                .recording()));
  }

  /** Two degrees of differential, and a lamp for two hours of one evening of it. */
  @Test
  void aLampInARestBeforeAStartIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(10)
                .pool(26.8)
                .circulating(10)
                .fan(1)
                .heating(120)
                .circulating(5)
                .change(Channel.POWER, (s, v) -> v + 240)
                .circulating(120)
                .heating(60)
                .recording()));
  }

  @Test
  void aFanLeftOnWhenThePoolMayBeWarmIsClear() {
    Rig unset =
        new Rig(
            new Site("test", 0),
            Pool.UNKNOWN,
            Optional.empty(),
            List.of(),
            Heater.UNKNOWN,
            Map.of());
    assertClear(
        rule,
        readings(RunBuilder.run().rig(unset).circulating(5).heating(120).fan(30).recording()));
  }

  @Test
  void aFanThatThawsTheCoilInColdAirIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .air(4)
                .circulating(5)
                .heating(60)
                .circulating(5)
                .fan(30)
                .circulating(5)
                .recording()));
  }

  @Test
  void warmEnoughWaterIsClear() {
    assertClear(rule, readings(RunBuilder.run().pool(27.6).off(5).fan(60).recording()));
  }

  @Test
  void needsADraw() {
    assertThat(
            reason(
                rule,
                readings(RunBuilder.run().only(Channel.WATER_IN).circulating(30).recording())))
        .isEqualTo("no power or current reading, so the fan is not seen");
  }
}
