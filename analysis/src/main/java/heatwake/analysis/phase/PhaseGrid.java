package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;

/** The phase at each instant of a timeline. */
public final class PhaseGrid {
  private final Phase[] phases;

  private PhaseGrid(Phase[] phases) {
    this.phases = phases;
  }

  /** Lays spans onto a timeline; instants outside every span are unknown. */
  public static PhaseGrid of(Timeline timeline, List<PhaseSpan> spans) {
    Phase[] phases = new Phase[timeline.size()];
    Arrays.fill(phases, Phase.UNKNOWN);
    for (PhaseSpan span : spans) {
      int from = timeline.firstAtOrAfter(span.startMs());
      int to = timeline.firstAtOrAfter(span.endMs());
      Arrays.fill(phases, Math.min(from, to), to, span.phase());
    }
    if (!spans.isEmpty() && phases.length > 0) {
      phases[phases.length - 1] = spans.get(spans.size() - 1).phase();
    }
    return new PhaseGrid(phases);
  }

  public int size() {
    return phases.length;
  }

  public Phase at(int i) {
    return phases[i];
  }

  public boolean is(int i, Phase phase) {
    return phases[i] == phase;
  }

  /** Whether the compressor runs, defrosts included. */
  public boolean compressorRuns(int i) {
    return phases[i].compressorRuns();
  }
}
