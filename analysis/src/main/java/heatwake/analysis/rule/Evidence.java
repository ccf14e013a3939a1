package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyReading;
import heatwake.analysis.duty.MeterLoad;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/**
 * Everything a rule may reason from.
 *
 * @param recording the readings as recorded, impossible ones included
 * @param timeline the possible readings on one grid
 * @param phases what the heater was doing
 * @param phaseGrid the same at each instant of the timeline
 * @param cycles compressor cycles
 * @param heat heat and energy of the run
 * @param zero how the temperature pair was zeroed; empty if it could not be
 * @param pool the pool as a second witness
 * @param steady steady spans with their figures
 * @param traces derived quantities on the grid of the timeline
 * @param load what else is on the heater's meter
 * @param duty the figures of each steady span with their uncertainties, in the order of {@code
 *     steady}
 */
public record Evidence(
    Recording recording,
    Timeline timeline,
    List<PhaseSpan> phases,
    PhaseGrid phaseGrid,
    List<Cycle> cycles,
    HeatFigures heat,
    Optional<ProbeZero> zero,
    PoolFigures pool,
    List<SteadySpan> steady,
    List<Trace> traces,
    MeterLoad load,
    List<Duty> duty) {

  /** Evidence with the duty read off its steady spans, and what else is metered off its rests. */
  public static Evidence of(
      Recording recording,
      Timeline timeline,
      List<PhaseSpan> phases,
      List<Cycle> cycles,
      HeatFigures heat,
      Optional<ProbeZero> zero,
      PoolFigures pool,
      List<SteadySpan> steady,
      List<Trace> traces) {
    PhaseGrid grid = PhaseGrid.of(timeline, phases);
    MeterLoad load = MeterLoad.of(timeline, grid);
    return new Evidence(
        recording,
        timeline,
        phases,
        grid,
        cycles,
        heat,
        zero,
        pool,
        steady,
        traces,
        load,
        DutyReading.of(recording.rig(), timeline, phases, steady, heat.flowKnowledge(), load));
  }

  /** A derived quantity on the grid of the timeline; empty where it is not known. */
  public Optional<double[]> trace(Trace.Kind kind) {
    return traces.stream().filter(one -> one.kind() == kind).map(Trace::values).findFirst();
  }
}
