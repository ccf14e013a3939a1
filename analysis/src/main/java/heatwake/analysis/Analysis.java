package heatwake.analysis;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.series.Recording;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * From what was recorded to what was found. The same computation serves a run that is over and the
 * run so far: window and recorder repeat it, nothing is computed incrementally a second way.
 */
public final class Analysis {
  private Analysis() {}

  /** Analyses a run, or as much of it as there is. Readings never make it fail. */
  public static Findings of(Recording recording) {
    return new Findings(
        recording.run(),
        recording.startMs(),
        recording.endMs(),
        Map.of(),
        HeatFigures.NONE,
        Optional.empty(),
        Optional.empty(),
        PoolFigures.NONE,
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Verdict(Side.UNDECIDED, 0, List.of(), List.of()),
        List.of(),
        List.of());
  }
}
