package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.scenario.OpenMeasurements;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against a chiller bench (its compressor signal is the witness) and an electric loop heater. */
class PhasesOfOpenMeasurementsTest {

  @ParameterizedTest
  @ValueSource(strings = {"day-a", "day-b", "day-c"})
  void agreesWithTheCompressorSignalOfTheBench(String day) {
    var recording = OpenMeasurements.recording("bench/" + day + ".csv", Rigs.bare());
    Phases phases = Phases.of(Timeline.of(recording), recording);
    List<String[]> witness = OpenMeasurements.rows("bench/" + day + ".witness.csv");
    int wrong = 0;
    for (String[] row : witness.subList(1, witness.size())) {
      boolean runs = phases.at(OpenMeasurements.timeMs(row)).compressorRuns();
      if (runs != row[3].equals("1")) {
        wrong++;
      }
    }
    // One-minute means: a start and a stop may each fall into a neighbouring minute.
    assertThat(wrong)
        .as(() -> phases.spans().toString())
        .isLessThanOrEqualTo(day.equals("day-c") ? 4 : 2);
  }

  @Test
  void knowsTheSandBoxHeaterIsAlwaysOn() {
    var recording = OpenMeasurements.recording("sandbox/sandbox.csv", Rigs.bare());
    Phases phases = Phases.of(Timeline.of(recording), recording);
    double running =
        phases.spans().stream()
            .filter(span -> span.phase().compressorRuns())
            .mapToDouble(PhaseSpan::durationS)
            .sum();
    assertThat(running / ((recording.endMs() - recording.startMs()) / 1e3))
        .as(() -> phases.spans().toString())
        .isGreaterThan(0.99);
  }
}
