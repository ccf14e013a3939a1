package heatwake.analysis;

import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.doubt.DoubtedReadings;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.heat.Energy;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.pool.PoolWitness;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.steady.SteadyFigures;
import heatwake.analysis.steady.SteadyFinder.Span;
import heatwake.analysis.steady.SteadySpans;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * All that is computed from readings before anything is judged.
 *
 * @param spans where the heater ran steadily, on the grid of the timeline
 * @param evidence the same, put together for the rules
 */
record Figures(
    Timeline timeline,
    Phases phases,
    WaterSide water,
    Electricity electricity,
    Energy energy,
    Circuit circuit,
    PoolWitness pool,
    List<Span> spans,
    Evidence evidence) {

  static Figures of(
      Recording recording, Timeline timeline, Phases phases, Electricity electricity) {
    WaterSide water = WaterSide.of(timeline, recording.rig(), phases);
    List<Span> spans = SteadySpans.of(timeline, phases, water, electricity);
    Energy energy = Energy.of(timeline, phases, water, electricity);
    return of(recording, timeline, phases, water, electricity, energy, spans);
  }

  /**
   * The same of a run without the readings in doubt. What the heater was doing, and where it did so
   * steadily, stays as it was told from all of them.
   */
  Figures without(DoubtedReadings doubted) {
    Recording left = doubted.leftOutOf(evidence.recording());
    Timeline grid = timeline.with(left);
    WaterSide side = WaterSide.of(grid, left.rig(), phases);
    Electricity electric = Electricity.of(left, grid);
    Energy sums = Energy.of(grid, phases, side, electric);
    return of(left, grid, phases, side, electric, sums, spans);
  }

  private static Figures of(
      Recording recording,
      Timeline timeline,
      Phases phases,
      WaterSide water,
      Electricity electricity,
      Energy energy,
      List<Span> spans) {
    Circuit circuit = Circuit.of(timeline, recording.rig());
    SteadyFigures figures =
        new SteadyFigures(timeline, recording.rig(), water, electricity, circuit);
    PoolWitness pool = PoolWitness.of(timeline, recording.rig(), phases, water);
    Evidence evidence =
        Evidence.of(
            recording,
            timeline,
            phases.spans(),
            phases.cycles(),
            energy.figures(),
            water.zero(),
            pool.figures(),
            spans.stream().map(figures::of).toList(),
            Traces.of(timeline, water, circuit));
    return new Figures(
        timeline, phases, water, electricity, energy, circuit, pool, spans, evidence);
  }
}
