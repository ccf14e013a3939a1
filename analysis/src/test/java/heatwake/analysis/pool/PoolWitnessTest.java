package heatwake.analysis.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

/** The pool's loss by the weather of a run, against the surface-loss equations at that weather. */
class PoolWitnessTest {
  private static final double ICE_POINT_K = 273.15;

  private static RunBuilder evening() {
    return RunBuilder.run()
        .with(Channel.HUMIDITY_IN, Channel.WIND_SPEED)
        .set(Channel.HUMIDITY_IN, 50)
        .set(Channel.WIND_SPEED, 1);
  }

  @Test
  void lossIsComputedFromTheWeather() {
    Findings findings = Analysis.of(evening().off(5).circulating(40).recording());
    Estimate loss = findings.pool().lossModelW().orElseThrow();
    SurfaceLoss expected =
        SurfaceLoss.open(
            38,
            Estimate.exact(ICE_POINT_K + 26),
            new Weather(
                Estimate.exact(ICE_POINT_K + 24),
                Estimate.exact(0.5),
                Estimate.exact(1),
                AbsolutePressure.STANDARD_ATMOSPHERE));
    assertThat(loss.value())
        .isCloseTo(expected.totalW().value(), within(0.02 * expected.totalW().value()));
    assertThat(loss.standard()).isGreaterThan(expected.totalW().standard());
    assertThat(findings.missing()).noneMatch(text -> text.startsWith("pool loss"));
  }

  @Test
  void saysWhatIsMissing() {
    Findings findings = Analysis.of(RunBuilder.run().off(5).circulating(40).recording());
    assertThat(findings.pool().lossModelW()).isEmpty();
    assertThat(findings.missing())
        .contains("pool loss from the weather: no humidity-in, no wind-speed");
  }

  @Test
  void readingsThatNoWeatherHasAreNoError() {
    RunBuilder wet = evening().set(Channel.HUMIDITY_IN, 104).off(5).circulating(40);
    assertThat(Analysis.of(wet.recording()).pool().lossModelW()).isPresent();
    RunBuilder storm = evening().set(Channel.WIND_SPEED, 60).off(5).circulating(40);
    assertThat(Analysis.of(storm.recording()).pool().lossModelW()).isEmpty();
  }

  /** Exchanged probes: what is called water-in gets warmer than the pool by all the rise. */
  @Test
  void anOutletIsNoPool() {
    Findings findings = Analysis.of(exchanged(Channel.WATER_POOL).recording());
    assertThat(findings.flags()).extracting(Flag::rule).contains("probes-swapped");
    assertThat(findings.pool()).isEqualTo(PoolFigures.NONE);
    assertThat(findings.missing())
        .contains(
            "pool: water-in may sit on the heater's outlet, so nothing is said of the pool; clip"
                + " water-pool, or see which of the two is the inlet");
    assertThat(Analysis.of(exchanged(Channel.TEMP_LIQUID).recording()).pool().poolK()).isPresent();
  }

  private static RunBuilder exchanged(Channel left) {
    return RunBuilder.run()
        .without(left)
        .heatingAt(Channel.WATER_OUT, -2)
        .off(5)
        .circulating(15)
        .heating(120);
  }

  /** Standing water in a pipe is no pool. */
  @Test
  void saysWhenThePoolWasLastSeen() {
    RunBuilder night = RunBuilder.run().off(5).circulating(15).heating(60).off(120);
    Findings findings = Analysis.of(night.recording());
    assertThat(findings.pool().poolMs().orElseThrow() - findings.startMs())
        .isBetween(78 * 60_000L, 82 * 60_000L);
  }

  /**
   * Runs of 3.5 min, in whose rests of 1.5 min the fan goes on: the pool warms by 0.2 K an hour,
   * 0.8 K in four hours, and the water that moves at the inlet is the pool's all along.
   */
  @Test
  void seesThePoolWarmUnderShortCycles() {
    assertThat(gainK(shortCycles(warming()).recording())).isCloseTo(0.8, within(0.05));
  }

  /** The same where no probe tells of the water. */
  @Test
  void seesThePoolWarmUnderShortCyclesByThePipesAlone() {
    RunBuilder run =
        shortCycles(
            warming()
                .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
                .every(10));
    assertThat(gainK(run.recording())).isCloseTo(0.8, within(0.08));
  }

  /** Water that is seen to stand in the rests is not the pool's, and pipes take time to flush. */
  @Test
  void waterThatStandsUnderTheFanIsNotThePool() {
    RunBuilder run = warming().circulating(20);
    for (int k = 0; k < 40; k++) {
      run.set(Channel.FLOW_HEATER, 0).set(Channel.PUMP_ON, 0).set(Channel.FLOW_SWITCH, 0).fan(1.5);
      run.free(Channel.FLOW_HEATER).free(Channel.PUMP_ON).free(Channel.FLOW_SWITCH).heating(3.5);
    }
    assertThat(gainK(run.recording())).isCloseTo(0, within(0.08));
  }

  /** 0.2 K an hour from the first run on. */
  private static RunBuilder warming() {
    RunBuilder.Change warms = (atS, cel) -> cel + 0.2 * Math.max(0, atS / 3600 - 1.0 / 3);
    return RunBuilder.run()
        .without(Channel.WATER_POOL)
        .change(Channel.WATER_IN, warms)
        .change(Channel.WATER_OUT, warms);
  }

  private static RunBuilder shortCycles(RunBuilder run) {
    run.circulating(20);
    for (int k = 0; k < 48; k++) {
      run.heating(3.5).fan(1.5);
    }
    return run;
  }

  /** By the heat stored in the 62 m3 of the rig, 72 kWh a kelvin. */
  private static double gainK(Recording recording) {
    double m3 = recording.rig().pool().volumeM3().orElseThrow();
    return Analysis.of(recording).pool().storedJ().orElseThrow().value() / (m3 * 4.16e6);
  }

  /** A pump that stops with the heater shows nothing of the pool's cooling. */
  @Test
  void aRestInWhichNothingToldOfThePoolHasNoLoss() {
    Findings pumpOff =
        Analysis.of(RunBuilder.run().circulating(10).heating(180).off(300).recording());
    assertThat(pumpOff.pool().warmingKPerS()).isPresent();
    assertThat(pumpOff.pool().lossAtRestW()).isEmpty();
    Findings pumpOn =
        Analysis.of(RunBuilder.run().circulating(10).heating(180).circulating(300).recording());
    assertThat(pumpOn.pool().lossAtRestW()).isPresent();
  }
}
