package heatwake.analysis.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
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
}
