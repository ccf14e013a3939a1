package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;

class PhasesTest {
  private static RunBuilder night() {
    return RunBuilder.run();
  }

  private static RunBuilder story(RunBuilder run) {
    return run.off(10).circulating(10).fan(0.5).heating(60).circulating(10).off(10);
  }

  private static Phases phasesOf(RunBuilder run) {
    var recording = run.recording();
    return Phases.of(Timeline.of(recording), recording);
  }

  @Test
  void everyProbeEverySecondIsRightWithinTenSeconds() {
    RunBuilder run = story(night());
    assertThat(edgesMissed(run, phasesOf(run), 10_000)).isEmpty();
  }

  @Test
  void spansLeaveNoHole() {
    RunBuilder run = story(night());
    Phases phases = phasesOf(run);
    List<PhaseSpan> spans = phases.spans();
    assertThat(spans.get(0).startMs()).isEqualTo(run.recording().startMs());
    assertThat(spans.get(spans.size() - 1).endMs()).isEqualTo(run.recording().endMs());
    for (int i = 1; i < spans.size(); i++) {
      assertThat(spans.get(i).startMs()).isEqualTo(spans.get(i - 1).endMs());
    }
  }

  /** Contract: each instant in exactly one phase. */
  @Test
  void whatBeginsWithTheLastInstantIsNoPhaseYet() {
    for (double lastMinutes : new double[] {1 / 60.0, 2 / 60.0, 0.1}) {
      RunBuilder run =
          night().only(Channel.POWER, Channel.FLOW_HEATER).off(10).circulating(lastMinutes);
      List<PhaseSpan> spans = phasesOf(run).spans();
      assertThat(spans).allSatisfy(span -> assertThat(span.endMs()).isGreaterThan(span.startMs()));
      assertThat(spans.get(spans.size() - 1).endMs()).isEqualTo(run.recording().endMs());
      for (int i = 1; i < spans.size(); i++) {
        assertThat(spans.get(i).startMs()).isEqualTo(spans.get(i - 1).endMs());
      }
    }
  }

  @Test
  void powerAndFlowAloneAreEnough() {
    RunBuilder run = story(night().only(Channel.POWER, Channel.FLOW_HEATER));
    assertThat(edgesMissed(run, phasesOf(run), 10_000)).isEmpty();
  }

  @Test
  void oneCycle() {
    Phases phases = phasesOf(story(night()));
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.cycles().get(0).startSeen()).isTrue();
    assertThat(phases.cycles().get(0).stopMs()).isPresent();
  }

  @Test
  void defrostIsFoundWithinTenSeconds() {
    RunBuilder run =
        night()
            .air(2)
            .off(5)
            .circulating(5)
            .heating(50)
            .defrost(6)
            .heating(40)
            .defrost(5)
            .heating(30);
    run.circulating(5);
    assertThat(edgesMissed(run, phasesOf(run), 10_000)).isEmpty();
    assertThat(phasesOf(run).cycles()).hasSize(1);
  }

  @Test
  void defrostIsFoundWithTemperaturesPowerAndFlow() {
    RunBuilder run =
        night()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .air(2)
            .circulating(5)
            .heating(50)
            .defrost(6)
            .heating(40);
    assertThat(edgesMissed(run, phasesOf(run), 40_000)).isEmpty();
  }

  @Test
  void temperaturesAndFlowAloneTellHeating() {
    RunBuilder run = story(night().only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER));
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.at(run.recording().startMs() + 50 * 60_000)).isEqualTo(Phase.STEADY);
    assertThat(phases.at(run.recording().startMs() + 5 * 60_000)).isEqualTo(Phase.OFF);
    assertThat(phases.at(run.recording().startMs() + 15 * 60_000)).isEqualTo(Phase.CIRCULATING);
  }

  @Test
  void aRiseIsTracedBackToTheStart() {
    RunBuilder run = story(night().only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER));
    Phases phases = phasesOf(run);
    // The story's rise follows at once by a lag of 30 s; half a minute more is allowed for others.
    assertThat(phases.cycles().get(0).startMs())
        .isBetween(start(run, 20.5) - 40_000, start(run, 20.5) + 10_000);
    assertThat(phases.cycles().get(0).stopMs().orElseThrow())
        .isBetween(start(run, 80.5) - 15_000, start(run, 80.5) + 10_000);
  }

  @Test
  void aMeterThatCountsAloneTellsTheCompressor() {
    RunBuilder run = story(night().only(Channel.ENERGY).resolution(Channel.ENERGY, 0.01));
    Phases phases = phasesOf(run);
    // 0.01 kWh at 2.7 kW are 13 s.
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.cycles().get(0).startMs())
        .isBetween(start(run, 20.5) - 14_000, start(run, 20.5) + 14_000);
    assertThat(phases.cycles().get(0).stopMs().orElseThrow())
        .isBetween(start(run, 80.5) - 14_000, start(run, 80.5) + 14_000);
  }

  @Test
  void whereTheRegisterIsTooCoarseTheRiseTellsShortRuns() {
    RunBuilder run =
        night()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.ENERGY)
            .resolution(Channel.ENERGY, 0.1)
            .circulating(20);
    for (int cycle = 0; cycle < 5; cycle++) {
      run.heating(4).circulating(4);
    }
    // Two of its steps are used in each run of 0.18 kWh, so the register shows hardly any of them.
    assertThat(phasesOf(run).cycles()).hasSize(5);
  }

  @Test
  void twoTemperaturesAloneStillTellHeating() {
    RunBuilder run = story(night().only(Channel.WATER_IN, Channel.WATER_OUT));
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.at(run.recording().startMs() + 50 * 60_000)).isEqualTo(Phase.STEADY);
  }

  @Test
  void standingWaterIsNoHeating() {
    RunBuilder run =
        night()
            .only(Channel.WATER_IN, Channel.WATER_OUT)
            .pool(30)
            .air(27)
            .change(Channel.WATER_OUT, (atS, cel) -> cel + 3 * Math.exp(-atS / 4000))
            .off(300);
    assertThat(phasesOf(run).cycles()).isEmpty();
  }

  @Test
  void pressuresAloneTellTheCompressor() {
    RunBuilder run = story(night().only(Channel.PRESSURE_DISCHARGE, Channel.PRESSURE_SUCTION));
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.cycles().get(0).startMs())
        .isBetween(start(run, 20.5), start(run, 20.5) + 20_000);
    assertThat(phases.cycles().get(0).stopMs().orElseThrow())
        .isBetween(start(run, 80.5), start(run, 80.5) + 20_000);
  }

  private static long start(RunBuilder run, double minutes) {
    return run.recording().startMs() + Math.round(minutes * 60_000);
  }

  /** Truth against finding, but for the moment at which starting becomes steady. */
  static List<String> edgesMissed(RunBuilder run, Phases phases, long toleranceMs) {
    return run.truth().stream()
        .filter(span -> span.phase() != Phase.STEADY)
        .filter(
            span ->
                phases.spans().stream()
                    .noneMatch(
                        found ->
                            found.phase() == span.phase()
                                && Math.abs(found.startMs() - span.startMs()) <= toleranceMs))
        .map(span -> span + " not in " + phases.spans())
        .toList();
  }
}
