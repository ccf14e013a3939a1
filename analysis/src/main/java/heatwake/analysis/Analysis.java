package heatwake.analysis;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.verdict.Judgement;
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
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    Evidence evidence =
        new Evidence(
            recording,
            timeline,
            phases.spans(),
            phases.cycles(),
            HeatFigures.NONE,
            Optional.empty(),
            PoolFigures.NONE,
            List.of(),
            List.of());
    Judgement judgement = Judgement.of(evidence);
    return new Findings(
        recording.run(),
        recording.startMs(),
        recording.endMs(),
        Map.of(),
        evidence.heat(),
        evidence.zero(),
        Optional.empty(),
        evidence.pool(),
        Optional.empty(),
        evidence.steady(),
        evidence.phases(),
        evidence.cycles(),
        judgement.flags(),
        List.of(),
        judgement.verdict(),
        judgement.missing(),
        evidence.traces());
  }
}
