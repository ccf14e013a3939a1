package heatwake.analysis.rule;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RunningStretchTest {
  @Test
  void goesFromStartOrDefrostToTheNextStopOrDefrost() {
    List<RunningStretch> stretches =
        RunningStretch.of(
            List.of(
                new PhaseSpan(Phase.FAN, 0, 10),
                new PhaseSpan(Phase.STARTING, 10, 20),
                new PhaseSpan(Phase.STEADY, 20, 30),
                new PhaseSpan(Phase.DEFROST, 30, 40),
                new PhaseSpan(Phase.STEADY, 40, 50),
                new PhaseSpan(Phase.CIRCULATING, 50, 60),
                new PhaseSpan(Phase.STARTING, 60, 70)));
    assertThat(stretches)
        .containsExactly(
            new RunningStretch(10, 30, Optional.of(Phase.DEFROST)),
            new RunningStretch(40, 50, Optional.of(Phase.CIRCULATING)),
            new RunningStretch(60, 70, Optional.empty()));
    assertThat(stretches).extracting(RunningStretch::defrosted).containsExactly(true, false, false);
  }
}
