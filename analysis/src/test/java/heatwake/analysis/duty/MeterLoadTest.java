package heatwake.analysis.duty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What else is on the heater's meter; powers by hand. */
class MeterLoadTest {
  private static RunBuilder story(double besideW) {
    return RunBuilder.run()
        .heatingAt(Channel.POWER, 2700 + besideW)
        .change(Channel.POWER, (atS, watts) -> watts < 500 ? watts + besideW : watts)
        .circulating(15)
        .heating(60)
        .circulating(30);
  }

  private static OptionalDouble watts(RunBuilder run) {
    Recording recording = run.recording();
    Timeline timeline = Timeline.of(recording);
    return MeterLoad.of(timeline, PhaseGrid.of(timeline, Phases.of(timeline, recording).spans()))
        .watts();
  }

  @Test
  void isWhatTheHeaterDrawsAtRestWithTheWaterMoving() {
    assertThat(watts(story(900)).orElseThrow()).isCloseTo(912, within(5.0));
  }

  /** Runs of 4 min never become steady; the pump draws beside them all the same. */
  @Test
  void isSeenBesideAHeaterThatNeverRunsForLong() {
    RunBuilder run =
        RunBuilder.run()
            .heatingAt(Channel.POWER, 3600)
            .change(Channel.POWER, (atS, watts) -> watts < 500 ? watts + 900 : watts)
            .circulating(15);
    for (int k = 0; k < 5; k++) {
      run.heating(4).circulating(6);
    }
    assertThat(watts(run).orElseThrow()).isCloseTo(912, within(20.0));
  }

  /** Common practice: a crankcase heater takes up to 80 W, at rest only. */
  @Test
  void aCrankcaseHeaterIsTheHeatersOwn() {
    assertThat(watts(story(70))).isEmpty();
  }

  /**
   * 150 L/min warmed by 1.6 K are 16.6 kW; with 3.6 kW metered that is a COP of 4.6 instead of 6.1.
   */
  @Test
  void isNotHeldAgainstTheHeater() {
    Findings findings = Analysis.of(story(900).recording());
    assertThat(findings.flags()).extracting(Flag::rule).doesNotContain("low-cop");
    assertThat(findings.heat().cop().orElseThrow().value()).isCloseTo(4.6, within(0.2));
    assertThat(findings.missing())
        .anyMatch(text -> text.startsWith("COP of the heater alone: power stands at 912 W"));
  }
}
