package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
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

  /** Repeats what the probe first said. */
  private static RunBuilder.Change hungUp() {
    double[] held = {Double.NaN};
    return (atS, value) -> {
      if (Double.isNaN(held[0])) {
        held[0] = value;
      }
      return held[0];
    };
  }

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

  /**
   * Compressors without lift warm their own pipes by the friction and the windings, the water not
   * at all (first law: no heat is pumped).
   */
  @Test
  void waterNeedNotFollowACompressorWithoutLift() {
    RunBuilder run = RunBuilder.run().noise(Channel.WATER_IN, 0.02);
    run.set(Channel.WATER_OUT, 26)
        .set(Channel.PRESSURE_DISCHARGE, 1550)
        .set(Channel.PRESSURE_SUCTION, 1550)
        .circulating(20)
        .heating(60);
    assertClear(rule, readings(run.recording()));
    run = RunBuilder.run().noise(Channel.WATER_IN, 0.02);
    run.set(Channel.WATER_OUT, 26).circulating(20).heating(60);
    assertThat(rule.evaluate(readings(run.recording()))).isInstanceOf(Outcome.Flagged.class);
  }

  /** The high side that stands still itself is no witness that nothing was lifted. */
  @Test
  void theHighSideSleepsThroughAStart() {
    RunBuilder run =
        RunBuilder.run()
            .noise(Channel.WATER_IN, 0.02)
            .change(Channel.PRESSURE_DISCHARGE, (atS, value) -> 1500);
    run.circulating(20).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("pressure-discharge stood at 1500 kPa for 80 min")
        .endsWith("the compressor switched meanwhile and water-out and pressure-suction followed");
  }

  /**
   * Valves that pass all they take in leave both sides at the standing pressure; the pipes warm by
   * the windings (first law: no heat is pumped).
   */
  @Test
  void aCoarseHighSideMayStandWhereNothingIsLifted() {
    RunBuilder run =
        RunBuilder.run()
            .noise(Channel.WATER_IN, 0.02)
            .noise(Channel.WATER_OUT, 0.02)
            .noise(Channel.PRESSURE_DISCHARGE, 2)
            .resolution(Channel.PRESSURE_DISCHARGE, 50)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1500)
            .heatingAt(Channel.PRESSURE_SUCTION, 1260)
            .heatingAt(Channel.WATER_OUT, 0.1);
    run.set(Channel.PRESSURE_DISCHARGE, 1500).circulating(20).heating(60);
    assertClear(rule, readings(run.recording()));
  }

  /** Whichever pipe is warmer: the one that stands has not seen the heater start. */
  @Test
  void theOutletShowsNoStartWhileTheInletGoesOn() {
    RunBuilder run =
        RunBuilder.run()
            .only(
                Channel.WATER_IN,
                Channel.WATER_OUT,
                Channel.POWER,
                Channel.FLOW_HEATER,
                Channel.AIR_IN)
            .noise(Channel.WATER_IN, 0.02)
            .resolution(Channel.WATER_OUT, 0.05)
            .noise(Channel.WATER_OUT, 0.03)
            .circulating(2)
            .change(Channel.WATER_OUT, (atS, value) -> 25.1)
            .circulating(10);
    Recording recording = warming(run.pool(25)).recording();
    assertThat(onlyFlag(rule, readings(recording)).channels()).containsExactly(Channel.WATER_OUT);
    assertThat(onlyFlag(rule, readings(recording)).evidence())
        .contains("water-in went on by 1.1 K meanwhile");
    assertClear(new ProbeSlipped(), readings(recording));
    assertClear(new ProbesSwapped(), readings(recording));
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
  void aProbeSleepsThroughAStart() {
    RunBuilder run = RunBuilder.run().change(Channel.WATER_OUT, hungUp());
    run.noise(Channel.WATER_IN, 0.02).circulating(20).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-out stood at 26.0 °C for 80 min")
        .contains("the compressor switched meanwhile and");
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

  /** A pool that warms by 0.3 K an hour under a heater of constant duty, in steps of 10 min. */
  private static RunBuilder warming(RunBuilder run) {
    for (int k = 0; k < 24; k++) {
      run.pool(25 + 0.05 * k).heating(10);
    }
    return run;
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

  /** Water that stands in the heater follows nothing (by hand). */
  @Test
  void pipesInStandingWaterMayStandStill() {
    RunBuilder run =
        RunBuilder.run()
            .without(Channel.FLOW_HEATER, Channel.FLOW_SWITCH)
            .off(5)
            .circulating(10)
            .heating(60)
            .set(Channel.PUMP_ON, 0)
            .heatingAt(Channel.WATER_OUT, 8)
            .heating(60)
            .off(10);
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

  /** Readings of 0.1 K every two seconds whose noise of 0.02 K seldom tips them. */
  private static RunBuilder coarse() {
    return RunBuilder.run()
        .every(2)
        .without(Channel.WATER_POOL)
        .noise(Channel.WATER_IN, 0.04)
        .noise(Channel.WATER_OUT, 0.02)
        .noise(Channel.POWER, 10)
        .resolution(Channel.WATER_IN, 0.1)
        .resolution(Channel.WATER_OUT, 0.1)
        .pool(23.95)
        .circulating(10);
  }

  private static RunBuilder warming(RunBuilder run, double fromCel, double toCel, double minutes) {
    for (double at = 0; at < minutes; at += 2) {
      run.pool(fromCel + (toCel - fromCel) * at / minutes).heating(2);
    }
    return run;
  }

  /** The inlet goes on and the power halves, as of a compressor that slows down. */
  @Test
  void aCoarseOutletThatStandsFarLongerThanEverIsStuck() {
    RunBuilder run = warming(coarse(), 24, 25, 80).change(Channel.WATER_OUT, hungUp());
    for (int k = 0; k < 60; k++) {
      run.pool(25 + 0.015 * k).heatingAt(Channel.POWER, 2700 - 30 * k).heating(2);
    }
    run.free(Channel.WATER_OUT);
    assertThat(onlyFlag(rule, readings(run.circulating(20).recording())).evidence())
        .contains("water-out stood at 26.6 °C")
        .contains("it never stood for more than ")
        .contains(" readings at other times, and water-in went on by 0.9 K meanwhile");
  }

  /**
   * Nothing tells whether the water moves on after the stop; moving or standing, the outlet would
   * have gone, unless it stands in air of its own temperature.
   */
  @Test
  void aCoarseOutletThatNoStopMovesIsStuck() {
    assertThat(onlyFlag(rule, readings(outletThroughAStop(24, hungUp()))).evidence())
        .contains("water-out stood at 26.6 °C")
        .contains("kept on for 30 min after the compressor stopped, ")
        .contains(" from water-in and 2.6 K from the air");
    assertClear(rule, readings(outletThroughAStop(26.6, hungUp())));
    assertClear(rule, readings(outletThroughAStop(24, (atS, value) -> value)));
  }

  private static Recording outletThroughAStop(double airCel, RunBuilder.Change change) {
    RunBuilder run =
        warming(
            coarse()
                .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
                .air(airCel),
            24,
            25,
            80);
    return run.change(Channel.WATER_OUT, change).pool(25).heating(60).off(30).recording();
  }

  /** Water that the meter sees move takes the heater's warmth away within minutes of the stop. */
  @Test
  void anOutletThatMovingWaterDoesNotCoolIsStuck() {
    RunBuilder.Change hung = (atS, value) -> atS > 40 * 60 ? 28 : value;
    assertThat(onlyFlag(rule, readings(stopped(hung).circulating(6.5).recording())).evidence())
        .contains("water-out stood at 28.0 °C")
        .contains("the compressor switched meanwhile and ");
    // Water that stands keeps its warmth, and a coarse reading with it.
    assertClear(rule, readings(stopped(hung).off(6.5).recording()));
    // A power meter that goes dead is no stop: the others do not follow.
    assertClear(rule, readings(stopped(hung).set(Channel.POWER, 12).heating(6.5).recording()));
  }

  private static RunBuilder stopped(RunBuilder.Change outlet) {
    return RunBuilder.run()
        .without(Channel.WATER_POOL, Channel.CURRENT)
        .noise(Channel.WATER_IN, 0.02)
        .resolution(Channel.WATER_OUT, 1 / 16.0)
        .heatingAt(Channel.WATER_OUT, 2)
        .change(Channel.WATER_OUT, outlet)
        .circulating(10)
        .heating(60);
  }

  /**
   * In air ten kelvins above the water the high side stands higher at rest than it runs; the
   * suction side is pumped down and the air cools, so the water is heated.
   */
  @Test
  void theOutletSleepsThroughAStartThatTheHighSideDoesNotShow() {
    assertThat(onlyFlag(rule, readings(inHotAir(1280, 26))).evidence())
        .contains("water-out stood at 23.6 °C")
        .contains("the compressor switched meanwhile and ");
    // Valves that pass all they take in pump nothing down.
    assertClear(rule, readings(inHotAir(1800, 26)));
    // Nor is a heater known to heat whose air is not cooled.
    assertClear(rule, readings(inHotAir(1280, 35.5)));
  }

  private static Recording inHotAir(double suctionKPa, double airOutCel) {
    RunBuilder run =
        RunBuilder.run()
            .without(Channel.WATER_POOL)
            .pool(23.6)
            .air(36)
            .noise(Channel.WATER_IN, 0.02)
            .set(Channel.PRESSURE_DISCHARGE, 1950)
            .set(Channel.PRESSURE_SUCTION, 1980)
            .set(Channel.AIR_OUT, 36)
            .set(Channel.WATER_OUT, 23.6)
            .circulating(10);
    return run.set(Channel.PRESSURE_DISCHARGE, 1900)
        .set(Channel.PRESSURE_SUCTION, suctionKPa)
        .set(Channel.AIR_OUT, airOutCel)
        .heating(40)
        .recording();
  }

  /** Nothing goes on meanwhile: the water is as calm as the reading. */
  @Test
  void aCoarseOutletOfACalmNightIsClear() {
    RunBuilder run = warming(coarse(), 24, 25, 80);
    assertClear(rule, readings(run.pool(25).heating(90).recording()));
  }

  /** The rise falls as the pool warms; its leaving water keeps still, but for its noise. */
  @Test
  void aCompressorThatHoldsTheLeavingWaterIsClear() {
    RunBuilder run = warming(coarse(), 24, 25, 80);
    for (int k = 0; k < 45; k++) {
      run.pool(25 + 0.02 * k).heatingAt(Channel.WATER_OUT, 1.6 - 0.02 * k).heating(2);
    }
    assertClear(rule, readings(run.recording()));
  }
}
