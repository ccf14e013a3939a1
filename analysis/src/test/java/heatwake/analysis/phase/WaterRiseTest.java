package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
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

  /** A start is seen to within a reading, a minute. */
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
    assertThat(runningS(recording)).isBetween(0.85 * 356 * 60, 357 * 60.0);
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

  /** Two pipes by a sunny wall; then the clamp, which speaks on change, says nothing to the end. */
  @Test
  void aDifferenceThatStoodAtRestIsNoHeatingWhereTheDrawFallsSilent() {
    RunBuilder run = coarse().with(Channel.CURRENT).off(1);
    run.change(Channel.WATER_IN, (s, v) -> 27.5).change(Channel.WATER_OUT, (s, v) -> 28.25);
    assertThat(runningS(run.off(180).silent(Channel.CURRENT).off(60).recording())).isZero();
    RunBuilder started = coarse().with(Channel.CURRENT).circulating(180);
    started.silent(Channel.CURRENT).circulating(10).heating(60);
    assertThat(runningS(started.recording())).isBetween(3000.0, 3700.0);
  }

  private static double digits(double value) {
    return Math.rint(value / 0.125) * 0.125;
  }

  /**
   * A frosty night by two probes of 0.2 K each of which one reads 0.1 K too much: 1.05 K of rise,
   * 0.7 K of chill in the defrosts of 4 min. Three standard uncertainties of the pair are 0.85 K,
   * so that only the rest before tells the chill from a stop.
   */
  private static RunBuilder doubtfulPair() {
    Rig rig = Rigs.typical();
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      rig = Rigs.withProbe(rig, channel, new ReadingUncertainty.Absolute(0.2));
    }
    return coarse().rig(rig).change(Channel.WATER_OUT, (s, v) -> digits(doubtful(v)));
  }

  private static double doubtful(double cel) {
    return cel + 0.1 + (cel < 26 ? 0.4 * (26 - cel) : 0);
  }

  private static List<Cycle> cycles(RunBuilder run) {
    Recording recording = run.recording();
    return Phases.of(Timeline.of(recording), recording).cycles();
  }

  @Test
  void aDefrostIsNoStopWhereTheRestBeforeTellsTheZeroOfThePair() {
    RunBuilder run = doubtfulPair().circulating(120);
    for (int k = 0; k < 8; k++) {
      run.heating(36).defrost(4);
    }
    assertThat(cycles(run.heating(36))).hasSize(1);
  }

  /** A coil that ices gives 10 to 25 % less before it defrosts (common practice). */
  @Test
  void aRiseThatFallsFromDefrostToDefrostIsNoStandingWater() {
    RunBuilder run = doubtfulPair().circulating(120);
    run.heating(36).defrost(4).heating(36).defrost(4);
    double from = (120 + 80) * 60;
    run.change(
        Channel.WATER_OUT,
        (s, v) -> digits(doubtful(v > 26 ? 26 + (v - 26) * (1 - 0.3 * (s - from) / 2160) : v)));
    run.heating(36).change(Channel.WATER_OUT, (s, v) -> digits(doubtful(v)));
    run.defrost(4).heating(36).defrost(4).heating(36);
    assertThat(cycles(run)).hasSize(1);
    assertThat(runningS(run.recording())).isBetween(0.95 * 196 * 60, 197 * 60.0);
  }

  /** A rest of five minutes at which the water chills nothing stays a stop. */
  @Test
  void aShortRestIsAStopThoughItIsNoLongerThanADefrost() {
    RunBuilder run = doubtfulPair().circulating(120);
    for (int k = 0; k < 4; k++) {
      run.heating(36).circulating(5);
    }
    assertThat(cycles(run.heating(36))).hasSize(5);
  }
}
