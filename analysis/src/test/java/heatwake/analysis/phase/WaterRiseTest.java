package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two thermometers and nothing else, of the kind that count eighths of a degree. */
class WaterRiseTest {
  private static RunBuilder coarse() {
    RunBuilder run = RunBuilder.run().only(Channel.WATER_IN, Channel.WATER_OUT).air(-3).every(60);
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      run.noise(channel, 0.06).resolution(channel, 0.125);
    }
    return run.heatingAt(Channel.WATER_OUT, 1.05);
  }

  private static double runningS(Recording recording) {
    return Phases.of(Timeline.of(recording), recording).spans().stream()
        .filter(span -> span.phase().compressorRuns())
        .mapToDouble(PhaseSpan::durationS)
        .sum();
  }

  /** In frost the heater defrosts every 40 min; a digit is an eighth of the rise, and no drift. */
  @Test
  void theJumpsOfCoarseDigitsAreNoDrift() {
    RunBuilder run = coarse().circulating(120);
    for (int k = 0; k < 8; k++) {
      run.heating(36).defrost(4);
    }
    Recording recording = run.heating(36).recording();
    assertThat(runningS(recording)).isBetween(0.85 * 356 * 60, 356 * 60.0);
  }

  /** Two pipes of unlike thickness cool apart: the difference halves in an hour (by hand). */
  @Test
  void standingWaterThatCoolsIsStillNoHeater() {
    RunBuilder run = coarse().off(1);
    run.change(Channel.WATER_IN, (s, v) -> digits(14 + 12 * Math.exp(-s / 5200)))
        .change(Channel.WATER_OUT, (s, v) -> digits(14 + 14 * Math.exp(-s / 5200)))
        .off(360);
    assertThat(runningS(run.recording())).isZero();
  }

  private static double digits(double value) {
    return Math.rint(value / 0.125) * 0.125;
  }
}
