package heatwake.analysis.rule;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Heating without a break: from a start or a defrost to the next stop or defrost.
 *
 * @param endedBy what came after it; empty where the run ended with it
 */
public record RunningStretch(long startMs, long endMs, Optional<Phase> endedBy) {

  /** Whether a defrost ended it. */
  public boolean defrosted() {
    return endedBy.filter(phase -> phase == Phase.DEFROST).isPresent();
  }

  /** The stretches of a run, in order. */
  public static List<RunningStretch> of(List<PhaseSpan> phases) {
    List<RunningStretch> found = new ArrayList<>();
    long fromMs = -1;
    long lastMs = -1;
    for (PhaseSpan span : phases) {
      if (span.phase() == Phase.STARTING || span.phase() == Phase.STEADY) {
        fromMs = fromMs < 0 ? span.startMs() : fromMs;
        lastMs = span.endMs();
      } else if (fromMs >= 0) {
        found.add(new RunningStretch(fromMs, lastMs, Optional.of(span.phase())));
        fromMs = -1;
      }
    }
    if (fromMs >= 0) {
      found.add(new RunningStretch(fromMs, lastMs, Optional.empty()));
    }
    return found;
  }
}
