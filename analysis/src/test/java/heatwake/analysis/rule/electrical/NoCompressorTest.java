package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

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
