package heatwake.analysis.bypass;

import heatwake.analysis.expected.Conditions;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the rise stands and where it belongs: the rises that today's expected heat makes at the
 * nameplate's greatest and least flow.
 */
public final class BypassHelp {
  /** Figures are means over the last minute of running; ours. */
  private static final double LAST_S = 60;

  private BypassHelp() {}

  /** The figures of the last minute with the compressor running; empty if it never ran. */
  public static Optional<BypassFigures> of(
      Timeline timeline, Rig rig, Phases phases, WaterSide water) {
    return phases.spans().stream()
        .filter(span -> span.phase().compressorRuns())
        .reduce((before, after) -> after)
        .map(span -> at(timeline, rig, water, span));
  }

  private static BypassFigures at(Timeline timeline, Rig rig, WaterSide water, PhaseSpan span) {
    int to = timeline.firstAtOrAfter(span.endMs());
    int from = Math.max(timeline.firstAtOrAfter(span.startMs()), to - timeline.instants(LAST_S));
    Optional<Estimate> expected =
        Nameplate.of(rig)
            .flatMap(plate -> Conditions.of(timeline, rig, from, to).map(plate::heatW));
    return new BypassFigures(
        timeline.timeMs(Math.max(from, to - 1)),
        water.share().flatMap(share -> share.over(from, to)),
        rise(water, from, to),
        expected,
        riseAt(expected, rig.heater().flowMaxM3PerS()),
        riseAt(expected, rig.heater().flowMinM3PerS()));
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
