package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Defrosts in which the water is not seen to be chilled; stories by hand. Common practice: hot gas
 * goes past the condenser with the fan at rest, the compressor draws a half to three quarters, and
 * it takes some minutes.
 */
class DefrostByDrawTest {
  private static final double RISE_K = 1.9;
  private static final double DRAW_W = 2700;

  private static RunBuilder frostyNight() {
    return frostyNight(1);
  }

  private static RunBuilder frostyNight(double everyS) {
    return RunBuilder.run()
        .every(everyS)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
        .with(Channel.AIR_AMBIENT)
        .air(2)
        .heatingAt(Channel.WATER_OUT, RISE_K)
        .heatingAt(Channel.FLOW_HEATER, 62)
        .circulating(10)
        .heating(45);
  }

  private static RunBuilder unheated(RunBuilder run, double draws, double minutes) {
    return run.heatingAt(Channel.WATER_OUT, 0)
        .heatingAt(Channel.POWER, draws)
        .heating(minutes)
        .heatingAt(Channel.WATER_OUT, RISE_K)
        .heatingAt(Channel.POWER, DRAW_W);
  }

  private static List<PhaseSpan> defrosts(RunBuilder run) {
    Recording recording = run.recording();
    return Phases.of(Timeline.of(recording), recording).spans().stream()
        .filter(span -> span.phase() == Phase.DEFROST)
        .toList();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 10, 30})
  void hotGasIsADefrostAndNoLossOfHeat(int everyS) {
    RunBuilder run = frostyNight(everyS);
    for (int i = 0; i < 3; i++) {
      unheated(run, 0.57 * DRAW_W, 8).heating(40);
    }
    List<PhaseSpan> found = defrosts(run);
    assertThat(found).hasSize(3);
    assertThat((found.get(0).endMs() - found.get(0).startMs()) / 60e3)
        .isCloseTo(8, within(0.5 + 2 * everyS / 60.0));
    assertThat(Analysis.of(run.recording()).flags())
        .extracting(Flag::rule)
        .doesNotContain("frosting", "low-heat", "low-cop");
  }

  @Test
  void whichTheRunsEndMayCutOff() {
    assertThat(defrosts(unheated(frostyNight(), 0.57 * DRAW_W, 5))).hasSize(1);
  }

  @Test
  void noneInWarmAir() {
    assertThat(defrosts(unheated(frostyNight().air(22), 0.57 * DRAW_W, 8).heating(40))).isEmpty();
  }

  @Test
  void noneWhereTheDrawStays() {
    assertThat(defrosts(unheated(frostyNight(), DRAW_W, 8).heating(40))).isEmpty();
  }

  @Test
  void noneWhereHeatStaysAway() {
    RunBuilder run =
        frostyNight()
            .heatingAt(Channel.WATER_OUT, 0)
            .heatingAt(Channel.POWER, 0.57 * DRAW_W)
            .heating(60);
    assertThat(defrosts(run)).isEmpty();
  }
}
