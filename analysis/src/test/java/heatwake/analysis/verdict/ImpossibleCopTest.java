package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * Carnot by hand: from air of 16.8 °C to water of 25.4 °C, 298.55 K / 8.6 K = 34.7, half of it
 * 17.4. Half as what no heater passes, and 20 where the air is no colder, are common practice.
 */
class ImpossibleCopTest {
  private static Evidence shortRuns(double airCel, double waterCel, double cop, double standard) {
    var recording = RunBuilder.run().air(airCel).pool(waterCel).circulating(10).recording();
    HeatFigures heat =
        new HeatFigures(
            Optional.empty(),
            1,
            Optional.empty(),
            1,
            Optional.empty(),
            Optional.of(new Estimate(cop, standard)),
            Optional.empty(),
            Optional.empty(),
            Optional.of(FlowKnowledge.MEASURED));
    Timeline timeline = Timeline.of(recording);
    return Evidence.of(
        recording,
        timeline,
        List.of(),
        List.of(
            new Cycle(
                recording.startMs(),
                OptionalLong.of(recording.endMs()),
                OptionalLong.empty(),
                true)),
        heat,
        Optional.empty(),
        PoolFigures.NONE,
        List.of(),
        List.of());
  }

  @Test
  void moreThanHalfOfCarnotsIsNotBelieved() {
    assertThat(ImpossibleCop.why(shortRuns(16.8, 25.4, 31.7, 1.1)).orElseThrow())
        .startsWith("a COP of 31.7 cannot be right: from air of 16.8 °C to water of 25.4 °C")
        .endsWith("half of Carnot's, 17.4");
    assertThat(ImpossibleCop.why(shortRuns(16.8, 25.4, 18.5, 1.1))).isEmpty();
    assertThat(ImpossibleCop.why(shortRuns(16.8, 25.4, 6, 0.3))).isEmpty();
  }

  @Test
  void warmAirBoundsNothingSoTheBestOfTheTradeDoes() {
    assertThat(ImpossibleCop.why(shortRuns(35, 25, 31.7, 1.1)).orElseThrow())
        .isEqualTo("a COP of 31.7 cannot be right: no heater exceeds 20");
    assertThat(ImpossibleCop.why(shortRuns(35, 25, 16, 1))).isEmpty();
  }

  @Test
  void isSaidWithoutAnySteadyRunning() {
    Judgement judgement = Judgement.of(shortRuns(16.8, 25.4, 31.7, 1.1));
    assertThat(judgement.missing()).anyMatch(text -> text.startsWith("heat and COP: not to be"));
    assertThat(judgement.verdict().side()).isEqualTo(Side.MEASUREMENT);
    assertThat(judgement.verdict().because().get(0)).startsWith("a COP of 31.7 cannot be right");
  }
}
