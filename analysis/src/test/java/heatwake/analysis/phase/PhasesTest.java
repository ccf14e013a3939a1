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
