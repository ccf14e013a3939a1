package heatwake.analysis.zero;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SlideTest {
  private static double[] line(double perS) {
    return IntStream.range(0, 120).mapToDouble(i -> perS * i).toArray();
  }

  @Test
  void aKelvinInTenMinutesMakesATenthOfAKelvinInAMinute() {
    // 0.1 K in the 60 s that lags are apart, rectangular: 0.1 / sqrt(3), by hand.
    double standard = Slide.standardK(line(0.1 / 60), line(0), 0, 120, 1);
    assertThat(standard).isCloseTo(0.1 / Math.sqrt(3), within(1e-9));
  }

  @Test
  void aPoolThatWarmsMakesNothingOfIt() {
    assertThat(Slide.standardK(line(1.0 / 3600), line(1.0 / 3600), 0, 120, 1)).isLessThan(0.01);
  }

  /** Two minutes of pump before the start; a cold pipe, and clips that follow in 100 and 130 s. */
  private static RunBuilder flush(double coldCel) {
    return RunBuilder.run()
        .every(10)
        .off(30)
        .change(Channel.WATER_IN, follows(1800, coldCel, 100))
        .change(Channel.WATER_OUT, follows(1800, coldCel, 130))
        .circulating(2.5)
        .free(Channel.WATER_IN)
        .free(Channel.WATER_OUT)
        .heating(60)
        .off(10);
  }

  private static RunBuilder.Change follows(double fromS, double coldCel, double constantS) {
    return (atS, cel) -> 26 + (coldCel - 26) * Math.exp((fromS - atS) / constantS);
  }

  private static Optional<Double> expanded(Recording recording) {
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    return Zeroing.of(timeline, recording.rig(), phases.spans(), phases.cycles(), Channel.WATER_OUT)
        .map(zero -> zero.offsetK().expanded());
  }

  @Test
  void aFlushOfColdPipesTellsNoCloseZero() {
    // 10 K colder: still 2 K apart from the pool at the end, with 0.5 K between the clips.
    assertThat(expanded(flush(16).recording()).orElse(1.0)).isGreaterThan(0.3);
  }

  @Test
  void aFlushOfPipesAsWarmAsThePoolDoes() {
    assertThat(expanded(flush(25.9).recording()).orElse(1.0)).isLessThan(0.1);
  }
}
