package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A draw so small that it may be a fan or a crankcase heater. */
class SmallFanTest {
  private final NoCompressor rule = new NoCompressor();

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
}
