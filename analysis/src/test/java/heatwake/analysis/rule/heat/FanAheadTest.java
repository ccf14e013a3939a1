package heatwake.analysis.rule.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FanAheadTest {
  /** A fan of 150 W, as the stories have it. */
  @Test
  void isReadAheadOfTheCompressor() {
    assertThat(watts(RunBuilder.run().circulating(10).fan(0.5).heating(20)).orElseThrow())
        .isCloseTo(150, within(10.0));
  }

  @Test
  void isNotKnownWhereNoneLeads() {
    assertThat(watts(RunBuilder.run().circulating(10).heating(20).fan(1).circulating(5))).isEmpty();
    assertThat(watts(RunBuilder.run().circulating(10).fan(5).heating(20))).isEmpty();
  }

  private static OptionalDouble watts(RunBuilder run) {
    Recording recording = run.recording();
    return FanAhead.watts(
        Evidence.of(
            recording,
            Timeline.of(recording),
            run.truth(),
            List.of(),
            HeatFigures.NONE,
            Optional.empty(),
            PoolFigures.NONE,
            List.of(),
            List.of()));
  }
}
