package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.measurement.StandingReadings.hungUp;
import static heatwake.analysis.rule.measurement.StandingReadings.warming;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.scenario.OpenMeasurements;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProbeStuckTest {
  private final ProbeStuck rule = new ProbeStuck();

  private static RunBuilder noisy() {
    RunBuilder run = RunBuilder.run();
    for (Channel channel :
        new Channel[] {
          Channel.WATER_IN,
          Channel.WATER_OUT,
          Channel.AIR_IN,
          Channel.TEMP_DISCHARGE,
          Channel.TEMP_LIQUID
        }) {
      run.noise(channel, 0.05).resolution(channel, 0.01);
    }
    return run.noise(Channel.PRESSURE_DISCHARGE, 5)
        .resolution(Channel.PRESSURE_DISCHARGE, 1)
        .noise(Channel.POWER, 10)
        .resolution(Channel.POWER, 1);
  }

  @Test
  void aJitteringProbeStandsStill() {
    RunBuilder run =
        noisy()
            .off(5)
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, hungUp())
            .heating(30)
            .free(Channel.WATER_IN)
            .heating(20);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .matches(
            "water-in stood at 2[56]\\.\\d °C for 30 min \\(180\\d readings\\); it never stands"
                + " still at other times");
  }

  /**
   * A normal jitter of 1.5 digits reads the same twice in one of five (1 / (2 sqrt(pi) 1.5), by
   * hand): 1800 in a row are no chance. One of a third of a digit may rest on a digit for hours.
   */
  @Test
  void aJitterOfAFewDigitsDoesNotStandStillByChance() {
    assertThat(rule.evaluate(readings(hungUpFor30Min(0.015)))).isInstanceOf(Outcome.Flagged.class);
    assertClear(rule, readings(hungUpFor30Min(0.003)));
  }

  private static Recording hungUpFor30Min(double noiseK) {
    return noisy()
        .noise(Channel.AIR_IN, noiseK)
        .circulating(10)
        .heating(60)
        .change(Channel.AIR_IN, hungUp())
        .heating(30)
        .free(Channel.AIR_IN)
        .heating(20)
        .recording();
  }

  @Test
  void theEnteringAirStandsWhileTheOutdoorAirGoesOn() {
    RunBuilder run =
        RunBuilder.run()
            .noise(Channel.AIR_AMBIENT, 0.05)
            .change(Channel.AIR_AMBIENT, (atS, value) -> 20 + atS / 3600)
            .resolution(Channel.AIR_IN, 0.1)
            .change(Channel.AIR_IN, (atS, value) -> atS < 60 ? 20 + 0.1 * (atS % 3) : 20.1);
    assertThat(onlyFlag(rule, readings(run.circulating(10).heating(120).recording())).evidence())
        .matches(
            "air-in stood at 20.1 °C for 2\\.1 h.*; air-ambient went on by [12]\\.\\d K meanwhile");
    // Half a degree as digit: 2 K of outdoor air are no ten digits.
    run =
        RunBuilder.run()
            .noise(Channel.AIR_AMBIENT, 0.05)
            .change(Channel.AIR_AMBIENT, (atS, value) -> 20 + atS / 3600)
            .change(Channel.AIR_IN, (atS, value) -> atS < 60 ? 20 + 0.5 * (atS % 3) : 20.5);
    assertClear(rule, readings(run.circulating(10).heating(120).recording()));
  }

  @Test
  void theInletStandsStillWhileThePoolGoesOn() {
    RunBuilder run =
        RunBuilder.run()
            .change(Channel.WATER_IN, (atS, value) -> Math.rint((26 + atS / 12_000) * 10) / 10)
            .change(Channel.WATER_POOL, (atS, value) -> 26 + atS / 12_000)
            .circulating(20)
            .heating(60)
            .change(Channel.WATER_IN, hungUp())
            .heating(200);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .contains("the other probe in the same water went on by 1.0 K meanwhile");
  }

  @Test
  void theOutletStandsStillWhileTheInletGoesOn() {
    RunBuilder run =
        RunBuilder.run().without(Channel.WATER_POOL).resolution(Channel.WATER_OUT, 0.0625);
    run.pool(25).circulating(20).heating(30).change(Channel.WATER_OUT, hungUp());
    assertThat(onlyFlag(rule, readings(warming(run).recording())).evidence())
        .endsWith("water-in went on by 1.1 K meanwhile, at equal duty of the heater");
  }

  @Test
  void theInletStandsStillWhileTheOutletGoesOn() {
    RunBuilder run =
        RunBuilder.run().without(Channel.WATER_POOL).resolution(Channel.WATER_IN, 0.0625);
    run.pool(24.5).circulating(20).pool(25).heating(30).change(Channel.WATER_IN, hungUp());
    assertThat(onlyFlag(rule, readings(warming(run).recording())).channels())
        .containsExactly(Channel.WATER_IN);
  }

  /** A clip that comes off the outlet cools to the air; the pool beside it honestly keeps still. */
  @Test
  void anOutletThatSlipsIsNoWitnessAgainstTheInlet() {
    RunBuilder run =
        RunBuilder.run()
            .without(Channel.WATER_POOL)
            .resolution(Channel.WATER_IN, 0.0625)
            .air(12)
            .pool(25)
            .circulating(20)
            .heating(60);
    for (int k = 1; k <= 24; k++) {
      double offK = 0.5 * k;
      run.change(Channel.WATER_OUT, (atS, cel) -> cel - offK).heating(5);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void anInletOfAPoolInBalanceMayStandWhileTheFlowFalls() {
    RunBuilder run =
        RunBuilder.run().without(Channel.WATER_POOL).resolution(Channel.WATER_IN, 0.0625);
    run.circulating(20).heating(30);
    for (int k = 0; k < 24; k++) {
      run.heatingAt(Channel.FLOW_HEATER, 150 - 2.5 * k)
          .heatingAt(Channel.WATER_OUT, 1.6 * 150 / (150 - 2.5 * k))
          .heating(10);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aCoarseProbeInASlowlyWarmingPoolMayStandStill() {
    RunBuilder run = RunBuilder.run().resolution(Channel.WATER_IN, 0.5);
    run.pool(25).circulating(20).heating(30);
    assertClear(rule, readings(warming(run).recording()));
  }

  @Test
  void aCoarsePoolThermometerMayStandStill() {
    RunBuilder run =
        noisy()
            .noise(Channel.WATER_POOL, 0.01)
            .resolution(Channel.WATER_POOL, 0.1)
            .circulating(30)
            .heating(240);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void lessThanFifteenMinutesIsClear() {
    RunBuilder run =
        noisy()
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, hungUp())
            .heating(14)
            .free(Channel.WATER_IN)
            .heating(20);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aMeterAtZeroIsClear() {
    RunBuilder run = noisy().noise(Channel.POWER, 0).set(Channel.POWER, 0).off(120);
    run.free(Channel.POWER).noise(Channel.POWER, 10).circulating(5).heating(60);
    assertClear(rule, readings(run.recording()));
  }

  /** The bench's logger repeats its last values all night, all channels alike. */
  @ParameterizedTest
  @ValueSource(
      strings = {"bench/day-a.csv", "bench/day-b.csv", "bench/day-c.csv", "sandbox/sandbox.csv"})
  void openMeasurementsAreClear(String file) {
    assertClear(rule, readings(OpenMeasurements.recording(file, Rigs.bare())));
  }
}
