package heatwake.analysis.bypass;

import heatwake.analysis.electric.ElectricSum;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.Conditions;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the water through the heater stands and where it belongs: its flow beside the nameplate's
 * range, and the rises that today's expected heat makes at the ends of that range.
 */
public final class BypassHelp {
  /** Figures are means over the last minute of running; ours. */
  private static final double LAST_S = 60;

  private BypassHelp() {}

  /** The figures of the last minute with the compressor running; empty if it never ran. */
  public static Optional<BypassFigures> of(
      Timeline timeline, Rig rig, Phases phases, WaterSide water, Electricity electricity) {
    return phases.spans().stream()
        .filter(span -> span.phase().compressorRuns())
        .reduce((before, after) -> after)
        .map(span -> at(timeline, rig, water, electricity, span));
  }

  private static BypassFigures at(
      Timeline timeline, Rig rig, WaterSide water, Electricity electricity, PhaseSpan span) {
    int to = timeline.firstAtOrAfter(span.endMs());
    int from = Math.max(timeline.firstAtOrAfter(span.startMs()), to - timeline.instants(LAST_S));
    Optional<Nameplate> plate = Nameplate.of(rig);
    Optional<Conditions> conditions = Conditions.of(timeline, rig, from, to);
    Optional<Estimate> expected = plate.flatMap(one -> conditions.map(one::heatW));
    Heater heater = rig.heater();
    return new BypassFigures(
        timeline.timeMs(Math.max(from, to - 1)),
        water.share().flatMap(share -> share.over(from, to)),
        water.heaterFlowM3PerS(from, to),
        heater.flowMinM3PerS(),
        heater.flowMaxM3PerS(),
        rise(water, from, to),
        expected,
        riseAt(expected, heater.flowMaxM3PerS()),
        riseAt(expected, heater.flowMinM3PerS()),
        power(electricity, from, to)
            .flatMap(
                power ->
                    plate.flatMap(one -> conditions.flatMap(one::powerW)).map(power::dividedBy)));
  }

  private static Optional<Estimate> power(Electricity electricity, int from, int to) {
    return electricity
        .power()
        .map(stream -> new ElectricSum(stream).add(from, to))
        .filter(sum -> !sum.isEmpty())
        .map(ElectricSum::meanW);
  }

  private static Optional<Estimate> rise(WaterSide water, int from, int to) {
    double rise = MovingMean.once(water.riseK(), from, to);
    return Double.isNaN(rise)
        ? Optional.empty()
        : water.pair().map(pair -> new Estimate(rise, pair.ofRiseK(rise)));
  }

  private static Optional<Estimate> riseAt(Optional<Estimate> heatW, OptionalDouble flowM3PerS) {
    return flowM3PerS.isPresent()
        ? heatW.map(
            heat ->
                heat.times(
                    1 / (flowM3PerS.getAsDouble() * PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K)))
        : Optional.empty();
  }
}
