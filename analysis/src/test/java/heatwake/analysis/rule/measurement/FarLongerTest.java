package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.measurement.StandingReadings.hungUp;
import static heatwake.analysis.rule.measurement.StandingReadings.warming;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import org.junit.jupiter.api.Test;

/** A coarse reading that stands far longer than it ever does. */
class FarLongerTest {
  private final ProbeStuck rule = new ProbeStuck();

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
