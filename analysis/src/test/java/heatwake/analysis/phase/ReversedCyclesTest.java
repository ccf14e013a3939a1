package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Defrosts that the water shows; stories by hand, defrosts of 4 to 6 min (common practice). */
class ReversedCyclesTest {
  private static RunBuilder frostyNight() {
    return RunBuilder.run()
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
        .air(2);
  }

  private static Phases phasesOf(RunBuilder run) {
    var recording = run.recording();
    return Phases.of(Timeline.of(recording), recording);
  }

  private static List<PhaseSpan> defrosts(Phases phases) {
    return phases.spans().stream().filter(span -> span.phase() == Phase.DEFROST).toList();
  }

  /** An inverter may draw in the defrost what it drew before. */
  @Test
  void chilledWaterIsADefrostThoughThePowerStays() {
    RunBuilder run =
        frostyNight()
            .circulating(10)
            .heating(50)
            .change(Channel.POWER, (atS, watts) -> watts / 0.7)
            .defrost(6)
            .free(Channel.POWER)
            .heating(40);
    Phases phases = phasesOf(run);
    assertThat(PhasesTest.edgesMissed(run, phases, 40_000)).isEmpty();
    assertThat(defrosts(phases)).hasSize(1);
    assertThat(phases.cycles()).hasSize(1);
  }

  @Test
  void leavingWaterWithinTheDoubtOfThePairIsNoDefrost() {
    RunBuilder run =
        frostyNight()
            .circulating(10)
            .heating(50)
            .change(Channel.WATER_OUT, (atS, kelvin) -> kelvin - 1.7)
            .heating(5)
            .free(Channel.WATER_OUT)
            .heating(40);
    // A rise of 1.6 K less 1.7 K: 0.1 K negative.
    assertThat(defrosts(phasesOf(run))).isEmpty();
  }

  @Test
  void enteringWaterThatWarmsAtOnceIsNoDefrost() {
    RunBuilder run =
        frostyNight()
            .circulating(10)
            .heating(50)
            .change(Channel.WATER_IN, (atS, kelvin) -> kelvin + 3)
            .heating(4)
            .free(Channel.WATER_IN)
            .heating(40);
    assertThat(defrosts(phasesOf(run))).isEmpty();
  }

  @Test
  void aDefrostBetweenTwoShortRestsIsOneDefrostAndNoCycle() {
    RunBuilder run = frostyNight().circulating(10).heating(50);
    for (int k = 0; k < 3; k++) {
      run.circulating(2 / 3.0).defrost(4).circulating(2 / 3.0).heating(40);
    }
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(defrosts(phases)).hasSize(3);
    // 4 min and two rests of 40 s.
    assertThat(defrosts(phases))
        .allSatisfy(span -> assertThat(span.durationS()).isBetween(310.0, 350.0));
  }

  /** After a cut-out in frost the first gas meets a cold exchanger: a start, and not before. */
  @Test
  void aRestBeforeAColdStartStaysARest() {
    RunBuilder run = frostyNight().circulating(10).heating(50).circulating(6);
    long startMs = run.nowMs();
    run.change(Channel.WATER_OUT, (atS, kelvin) -> kelvin - 3.2)
        .heating(1.5)
        .free(Channel.WATER_OUT)
        .heating(40);
    List<Cycle> cycles = phasesOf(run).cycles();
    assertThat(cycles).hasSize(2);
    assertThat(cycles.get(1).startMs()).isBetween(startMs - 10_000, startMs + 10_000);
  }

  @Test
  void aRestThatChillsNothingStaysARest() {
    Phases phases =
        phasesOf(frostyNight().circulating(10).heating(50).circulating(2 / 3.0).heating(40));
    assertThat(defrosts(phases)).isEmpty();
    assertThat(phases.cycles()).hasSize(2);
  }

  @Test
  void aSilenceOfSecondsIsNoStop() {
    RunBuilder run = frostyNight().circulating(10).heating(20);
    run.change(Channel.POWER, (atS, watts) -> Double.NaN).heating(0.1).free(Channel.POWER);
    Phases phases = phasesOf(run.heating(20));
    assertThat(phases.cycles()).hasSize(1);
  }

  /** Two temperatures and power: whether water moves is not known at rest, the rest is. */
  @Test
  void aStartAfterARestIsSeenThoughTheWaterIsNot() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .circulating(5)
            .heating(12);
    for (int k = 0; k < 4; k++) {
      run.circulating(1.25).heating(12);
    }
    Phases phases = phasesOf(run.circulating(5));
    assertThat(phases.cycles()).hasSize(5);
    assertThat(phases.cycles()).allSatisfy(cycle -> assertThat(cycle.startSeen()).isTrue());
  }

  private static final Channel[] TWO_AND_FLOW = {
    Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER
  };

  /** Minutes of chilled water, twice a reading, right after heating: no rest does that. */
  @ParameterizedTest
  @CsvSource({"1, 0", "10, 0", "60, 0", "1, 0.7", "10, 0.7", "60, 0.7"})
  void theEndOfARunCutsADefrostOffWhateverTells(double everyS, double valveRestMin) {
    List<Channel[]> sets =
        List.of(
            new Channel[] {Channel.WATER_IN, Channel.WATER_OUT},
            TWO_AND_FLOW,
            new Channel[] {
              Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.POWER
            });
    for (Channel[] set : sets) {
      RunBuilder run = RunBuilder.run().only(set).air(1).every(everyS).circulating(30).heating(40);
      if (valveRestMin > 0) {
        run.circulating(valveRestMin);
      }
      Phases phases = phasesOf(run.defrost(4));
      assertThat(phases.cycles()).as("cycles with %d probes", set.length).hasSize(1);
      assertThat(defrosts(phases)).as("defrosts with %d probes", set.length).hasSize(1);
      assertThat(defrosts(phases).get(0).durationS()).isBetween(200.0, 345.0);
    }
  }

  /** At a stop the difference falls to nothing, and no further. */
  @Test
  void theEndOfARunAfterAStopIsNoDefrost() {
    for (double minutes : List.of(2.0, 5.0, 9.0)) {
      RunBuilder run =
          RunBuilder.run().only(TWO_AND_FLOW).air(1).every(10).circulating(30).heating(40);
      assertThat(defrosts(phasesOf(run.circulating(minutes)))).isEmpty();
    }
  }

  /** Outlet pipe in the frost, inlet indoors: 2 K apart within the hour, but not in minutes. */
  @Test
  void aPipeThatCoolsAfterTheStopIsNoDefrost() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT)
            .air(1)
            .every(10)
            .circulating(30)
            .heating(40);
    run.change(Channel.WATER_OUT, (s, v) -> 26 + 1.6 - 4 * (1 - Math.exp(-(s - 4200) / 3600)))
        .change(Channel.WATER_IN, (s, v) -> 26)
        .off(40);
    assertThat(defrosts(phasesOf(run))).isEmpty();
  }
}
