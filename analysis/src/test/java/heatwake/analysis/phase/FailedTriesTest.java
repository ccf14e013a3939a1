package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A motor that does not turn draws five to seven times its rated current and trips within some ten
 * seconds; its protector closes again after minutes (common practice). Readings every half minute
 * catch some of these tries, each as a lone spike.
 */
class FailedTriesTest {
  private static final Channel[] WATER_AND_POWER = {
    Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.POWER
  };

  private static RunBuilder run(boolean pressures) {
    RunBuilder run =
        RunBuilder.run().noise(Channel.WATER_IN, 0.03).noise(Channel.WATER_OUT, 0.03).every(30);
    return pressures ? run : run.only(WATER_AND_POWER);
  }

  /** Readings that fall between two instants of the grid, so that a spike shows at both. */
  private static Recording betweenInstants(Recording recording) {
    return new Recording(
        recording.run(),
        recording.rig(),
        recording.startMs() - 14_000,
        recording.endMs(),
        recording.series(),
        recording.events(),
        recording.notes());
  }

  private static Phases phases(Recording recording) {
    return Phases.of(Timeline.of(recording), recording);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void triesAfterHoursOfHeatingAreNoRuns(boolean pressures) {
    Recording recording =
        betweenInstants(
            run(pressures)
                .circulating(10)
                .heating(120)
                .circulating(20)
                .change(Channel.POWER, (s, v) -> s % 150 < 10 ? 15_000 : v)
                .fan(120)
                .recording());
    assertThat(phases(recording).cycles()).hasSize(1);
    assertThat(Analysis.of(recording).flags())
        .extracting(Flag::rule)
        .containsExactly("no-compressor");
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void runsOfAMinuteThatLiftAndWarmAreRuns(boolean pressures) {
    RunBuilder run = run(pressures).circulating(10).heating(120).circulating(20);
    for (int k = 0; k < 8; k++) {
      run.heating(1).circulating(5);
    }
    assertThat(phases(betweenInstants(run.recording())).cycles()).hasSize(9);
  }

  /** The lift of the run before has not bled off, so that nothing tells of a new one. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aMinuteRightAfterARunIsARun(boolean pressures) {
    Recording recording =
        betweenInstants(
            run(pressures)
                .circulating(10)
                .heating(120)
                .circulating(1.5)
                .heating(1)
                .circulating(30)
                .recording());
    assertThat(phases(recording).cycles()).hasSize(2);
  }

  /** A clamp that is read more often tells no more of a try that the power meter caught once. */
  @Test
  void aClampReadMoreOftenMakesNoRunOfATry() {
    Recording slow =
        run(true)
            .circulating(10)
            .heating(120)
            .circulating(20)
            .change(Channel.POWER, (s, v) -> s % 150 < 10 ? 15_000 : v)
            .fan(120)
            .recording();
    Recording quick =
        run(true)
            .every(8)
            .only(Channel.CURRENT)
            .circulating(10)
            .heating(120)
            .circulating(20)
            .fan(120)
            .recording();
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    series.putAll(slow.series());
    series.put(Channel.CURRENT, quick.series().get(Channel.CURRENT));
    assertThat(phases(betweenInstants(slow.with(series))).cycles()).hasSize(1);
  }
}
