package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tries of a motor that does not start, by their draw. */
class StartTriesTest {
  private final NoCompressor rule = new NoCompressor();

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
}
