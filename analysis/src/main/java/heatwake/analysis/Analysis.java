package heatwake.analysis;

import heatwake.analysis.bypass.BypassHelp;
import heatwake.analysis.cost.Cost;
import heatwake.analysis.coverage.Assumed;
import heatwake.analysis.coverage.Coverage;
import heatwake.analysis.coverage.LostSources;
import heatwake.analysis.coverage.WrongStamps;
import heatwake.analysis.doubt.DoubtedHeat;
import heatwake.analysis.doubt.DoubtedReadings;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.EnteringAir;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.heat.CycleSums;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.startup.StartupList;
import heatwake.analysis.steady.WhyNotSteady;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.verdict.Judgement;
import heatwake.analysis.verdict.Raised;
import java.util.List;

/**
 * From what was recorded to what was found. Readings that a measurement flag accuses are judged by
 * the rules and then left out of every figure. The same computation serves a run that is over and
 * the run so far: window and recorder repeat it, nothing is computed incrementally a second way.
 */
public final class Analysis {
  private Analysis() {}

  /** Analyses a run, or as much of it as there is. Readings never make it fail. */
  public static Findings of(Recording recording) {
    Timeline timeline = Timeline.of(recording);
    Electricity electricity = Electricity.of(recording, timeline);
    Phases phases = Phases.of(timeline, recording, electricity);
    Figures all = Figures.of(recording, timeline, phases, electricity);
    Raised raised = Raised.of(all.evidence());
    DoubtedReadings doubted = DoubtedReadings.of(raised.flags());
    Figures given = doubted.isEmpty() ? all : all.without(doubted);
    Judgement judgement =
        doubted.isEmpty()
            ? Judgement.of(raised, all.evidence())
            : Judgement.of(raised, Raised.of(given.evidence()), given.evidence());
    Evidence evidence = given.evidence();
    return new Findings(
        recording.run(),
        recording.startMs(),
        recording.endMs(),
        Coverage.of(recording),
        evidence.heat(),
        judgement.heatDoubt(),
        evidence.zero(),
        BypassHelp.of(
            given.timeline(), recording.rig(), phases, given.water(), given.electricity()),
        evidence.pool(),
        Cost.of(recording.rig(), evidence.heat()),
        evidence.steady(),
        evidence.phases(),
        CycleSums.of(given.timeline(), phases.cycles(), given.water(), given.electricity()),
        judgement.flags(),
        StartupList.of(evidence),
        judgement.verdict(),
        together(
            List.of(
                LostSources.of(recording),
                WrongStamps.of(recording),
                DoubtedHeat.missing(doubted, judgement.flags(), all.water(), given.water()),
                given.water().missing(),
                given.energy().missing(),
                evidence.load().missing(),
                Nameplate.missing(given.timeline(), recording.rig()),
                EnteringAir.missing(
                    given.timeline(),
                    recording.rig(),
                    given.spans().stream().map(one -> new Stretch(one.from(), one.to())).toList()),
                given.circuit().missing(),
                WhyNotSteady.inWords(given.spans(), phases.cycles(), recording.endMs()).stream()
                    .toList(),
                given.pool().missing(),
                Assumed.uncertainties(recording),
                judgement.missing())),
        evidence.traces());
  }

  private static List<String> together(List<List<String>> parts) {
    return parts.stream().flatMap(List::stream).distinct().toList();
  }
}
