package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.measurement.StandingReadings.hungUp;
import static heatwake.analysis.rule.measurement.StandingReadings.warming;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import org.junit.jupiter.api.Test;

/** Readings that stand still through a start or a stop of the compressor. */
class SleptThroughTest {
  private final ProbeStuck rule = new ProbeStuck();

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
  void aProbeSleepsThroughAStart() {
    RunBuilder run = RunBuilder.run().change(Channel.WATER_OUT, hungUp());
    run.noise(Channel.WATER_IN, 0.02).circulating(20).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-out stood at 26.0 °C for 80 min")
        .contains("the compressor switched meanwhile and");
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
}
