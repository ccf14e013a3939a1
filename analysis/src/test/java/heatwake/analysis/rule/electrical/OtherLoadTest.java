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

/**
 * Lamps and chlorinators on the heater's meter, 100 to 400 W (common practice), beside fans of the
 * same size. The pool is to have 28 Cel.
 */
class OtherLoadTest {
  private final NoCompressor rule = new NoCompressor();

  private static RunBuilder few() {
    return RunBuilder.run()
        .every(10)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
        .noise(Channel.POWER, 4)
        .air(10)
        .pool(26);
  }

  private static RunBuilder load(RunBuilder run, double watts) {
    return run.change(Channel.POWER, (s, v) -> v + watts);
  }

  /** The pump's timer ends the run; both pipes cool towards the air, and a lamp is lit. */
  @ParameterizedTest
  @ValueSource(doubles = {100, 300, 400})
  void aLampByStandingPipesIsNoFan(double watts) {
    assertClear(
        rule,
        readings(
            load(few().circulating(5).fan(0.5).heating(120).off(20), watts)
                .off(180)
                .free(Channel.POWER)
                .off(120)
                .recording()));
  }

  /** The same evening without a run of the compressor. */
  @Test
  void norIsItOnANightWithoutARun() {
    assertClear(rule, readings(load(few().circulating(5), 300).off(180).recording()));
  }

  /** Pipes that keep the pool's temperature carry its water, and the call is the pool's. */
  @Test
  void aFanAloneByMovingWaterIsNamedThere() {
    assertThat(onlyFlag(rule, readings(few().circulating(20).fan(60).recording())).evidence())
        .startsWith("Fan ran without the compressor starting for 60 min (15");
  }

  /** Fresh water ends the standing. */
  @Test
  void soIsOneAfterPipesThatStood() {
    onlyFlag(rule, readings(few().off(120).circulating(20).fan(60).recording()));
  }

  /**
   * A chlorinator that runs 70 minutes of every two hours (common practice: by its own timer), with
   * the pool set back for the night.
   */
  @Test
  void aLoadThatStepsBesideTheCompressorIsNoFan() {
    assertClear(
        rule,
        readings(
            few()
                .change(Channel.POWER, (s, v) -> v + (s % 7200 < 4200 ? 150 : 0))
                .circulating(240)
                .heating(480)
                .circulating(240)
                .recording()));
  }

  /** A lamp of one evening also burns at the set temperature, where no heat is called for. */
  @Test
  void aLoadThatAlsoStandsWithoutACallIsNoFan() {
    RunBuilder run = load(few().circulating(20), 170).circulating(60);
    run.free(Channel.POWER).circulating(60).heating(120).pool(28).heating(60).circulating(30);
    assertClear(rule, readings(load(run, 170).circulating(120).recording()));
  }

  /** Where it only stands with a call it may be the fan. */
  @Test
  void aFanThatOnlyRunsWithACallIsNamed() {
    RunBuilder run = few().circulating(20).fan(60).circulating(60);
    onlyFlag(rule, readings(run.pool(28).circulating(180).recording()));
  }

  /** The night's setback ends the run, and a lamp burns on that draws twice what the fan did. */
  @Test
  void aLoadThatIsClearlyNotTheFanSeenBeforeIsNone() {
    assertClear(rule, readings(load(ran(), 320).circulating(120).recording()));
  }

  /** The same watts as the fan before the start are the fan's. */
  @Test
  void theFanSeenBeforeIsNamed() {
    assertThat(onlyFlag(rule, readings(ran().fan(120).recording())).evidence())
        .startsWith("Fan ran without the compressor starting for 2.0 h (15");
  }

  private static RunBuilder ran() {
    return few().circulating(20).fan(1).heating(120).circulating(20);
  }
}
