package heatwake.analysis;

import heatwake.analysis.bypass.BypassHelp;
import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.cost.Cost;
import heatwake.analysis.coverage.Assumed;
import heatwake.analysis.coverage.Coverage;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.heat.CycleSums;
import heatwake.analysis.heat.Energy;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.pool.PoolWitness;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.startup.StartupList;
import heatwake.analysis.steady.SteadyFigures;
import heatwake.analysis.steady.SteadyFinder;
import heatwake.analysis.steady.SteadySpans;
import heatwake.analysis.steady.WhyNotSteady;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.verdict.Judgement;
import java.util.List;

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
    WaterSide water = WaterSide.of(timeline, recording.rig(), phases);
    Electricity electricity = Electricity.of(recording, timeline);
    Energy energy = Energy.of(timeline, phases, water, electricity);
    Circuit circuit = Circuit.of(timeline, recording.rig());
    SteadyFigures figures =
        new SteadyFigures(timeline, recording.rig(), water, electricity, circuit);
    List<SteadyFinder.Span> still = SteadySpans.of(timeline, phases, water, electricity);
    List<SteadySpan> steady = still.stream().map(figures::of).toList();
    List<Trace> traces = Traces.of(timeline, water, circuit);
    PoolWitness pool = PoolWitness.of(timeline, recording.rig(), phases);
    Evidence evidence =
        new Evidence(
            recording,
            timeline,
            phases.spans(),
            phases.cycles(),
            energy.figures(),
            water.zero(),
            pool.figures(),
            steady,
            traces);
    Judgement judgement = Judgement.of(evidence);
    return new Findings(
        recording.run(),
        recording.startMs(),
        recording.endMs(),
        Coverage.of(recording),
        evidence.heat(),
        evidence.zero(),
        BypassHelp.of(timeline, recording.rig(), phases, water),
        evidence.pool(),
        Cost.of(recording.rig(), energy.figures()),
        evidence.steady(),
        evidence.phases(),
        CycleSums.of(timeline, phases.cycles(), water, electricity),
        judgement.flags(),
        StartupList.of(evidence),
        judgement.verdict(),
        together(
            List.of(
                water.missing(),
                energy.missing(),
                Nameplate.missing(timeline, recording.rig()),
                circuit.missing(),
                WhyNotSteady.inWords(still, phases.cycles(), recording.endMs()).stream().toList(),
                pool.missing(),
                Assumed.uncertainties(recording),
                judgement.missing())),
        evidence.traces());
  }

  private static List<String> together(List<List<String>> parts) {
    return parts.stream().flatMap(List::stream).distinct().toList();
  }
}
