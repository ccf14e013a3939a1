package heatwake.analysis;

import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.coverage.Coverage;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.heat.Energy;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.steady.SteadyFigures;
import heatwake.analysis.steady.SteadySpans;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.verdict.Judgement;
import java.util.ArrayList;
import java.util.List;
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
    WaterSide water = WaterSide.of(timeline, recording.rig(), phases);
    Electricity electricity = Electricity.of(recording, timeline);
    Energy energy = Energy.of(timeline, phases, water, electricity);
    Circuit circuit = Circuit.of(timeline, recording.rig());
    SteadyFigures figures =
        new SteadyFigures(timeline, recording.rig(), water, electricity, circuit);
    List<SteadySpan> steady =
        SteadySpans.of(timeline, phases, water, electricity).stream().map(figures::of).toList();
    List<Trace> traces = traces(timeline, water, circuit);
    Evidence evidence =
        new Evidence(
            recording,
            timeline,
            phases.spans(),
            phases.cycles(),
            energy.figures(),
            water.zero(),
            PoolFigures.NONE,
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
        Optional.empty(),
        evidence.pool(),
        Optional.empty(),
        evidence.steady(),
        evidence.phases(),
        evidence.cycles(),
        judgement.flags(),
        List.of(),
        judgement.verdict(),
        together(
            List.of(
                water.missing(),
                energy.missing(),
                Nameplate.missing(timeline, recording.rig()),
                circuit.missing(),
                judgement.missing())),
        evidence.traces());
  }

  private static List<Trace> traces(Timeline timeline, WaterSide water, Circuit circuit) {
    List<Trace> traces = new ArrayList<>();
    water.heat().ifPresent(heat -> traces.add(trace(Trace.Kind.HEAT, timeline, heat.heatW())));
    if (water.pair().isPresent()) {
      traces.add(trace(Trace.Kind.RISE, timeline, water.riseK(timeline)));
    }
    water
        .heaterFlowTrace()
        .ifPresent(flow -> traces.add(trace(Trace.Kind.HEATER_FLOW, timeline, flow)));
    water
        .share()
        .ifPresent(share -> traces.add(trace(Trace.Kind.HEATER_SHARE, timeline, share.trace())));
    if (recorded(circuit.condensingK())) {
      traces.add(trace(Trace.Kind.CONDENSING, timeline, circuit.condensingK()));
    }
    if (recorded(circuit.evaporatingK())) {
      traces.add(trace(Trace.Kind.EVAPORATING, timeline, circuit.evaporatingK()));
    }
    return traces;
  }

  private static boolean recorded(double[] values) {
    for (double value : values) {
      if (!Double.isNaN(value)) {
        return true;
      }
    }
    return false;
  }

  private static Trace trace(Trace.Kind kind, Timeline timeline, double[] values) {
    return new Trace(kind, timeline.startMs(), timeline.stepMs(), values);
  }

  private static List<String> together(List<List<String>> parts) {
    return parts.stream().flatMap(List::stream).distinct().toList();
  }
}
