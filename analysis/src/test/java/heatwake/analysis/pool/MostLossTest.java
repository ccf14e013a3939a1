package heatwake.analysis.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

/** The limit against the equations worked out by hand. */
class MostLossTest {
  private static final Estimate POOL_K = Estimate.exact(301.15);

  private static double wPerM2(RunBuilder run, Rig rig) {
    MostLoss most = MostLoss.of(Timeline.of(run.rig(rig).recording()), rig, POOL_K).orElseThrow();
    return most.totalW().value() / most.areaM2();
  }

  /**
   * By hand: saturation 3.782 kPa at 28 Cel and 1.706 kPa at 15 Cel (ASHRAE Handbook Fundamentals,
   * psychrometrics, table of water at saturation), air at 20 %: 3.441 kPa apart. Evaporation (89 +
   * 78.2 x 3) x 3.441 = 1114 W/m2; convection by Bowen's ratio 0.067 kPa/K x 13 K x 323.6 = 282;
   * radiation 0.95 sigma (301.15^4 - 268.15^4) = 0.95 x (466.4 - 293.2) = 165. Together 1560.
   */
  @Test
  void inUnknownWeatherAboutFifteenHundredWattsASquareMetre() {
    assertThat(wPerM2(RunBuilder.run().air(15).heating(30), Rigs.typical()))
        .isCloseTo(1560, within(20.0));
  }

  /**
   * By hand, wind 0.5 m/s, 60 %: 3.782 - 0.6 x 1.706 = 2.758 kPa; (89 + 39.1) x 2.758 x 1.5 = 530;
   * convection 0.067 x 13 x 128.1 x 1.5 = 167; radiation 165. Together 862.
   */
  @Test
  void inMeasuredWeatherWhatThatCanTake() {
    RunBuilder run =
        RunBuilder.run()
            .air(15)
            .with(Channel.WIND_SPEED, Channel.HUMIDITY_IN)
            .set(Channel.WIND_SPEED, 0.5)
            .set(Channel.HUMIDITY_IN, 60)
            .heating(30);
    assertThat(wPerM2(run, Rigs.typical())).isCloseTo(862, within(12.0));
  }

  @Test
  void withoutAnAirTemperatureThereIsNoLimit() {
    RunBuilder run = RunBuilder.run().only(Channel.WATER_IN).heating(30);
    assertThat(MostLoss.of(Timeline.of(run.recording()), Rigs.typical(), POOL_K)).isEmpty();
  }
}
