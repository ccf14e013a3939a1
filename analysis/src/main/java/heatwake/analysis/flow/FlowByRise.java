package heatwake.analysis.flow;

import heatwake.analysis.expected.MostHeat;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Pair;
import java.util.List;
import java.util.OptionalDouble;

/** The most water that the rise of the temperature allows: more would need more heat. */
final class FlowByRise {
  private FlowByRise() {}

  /**
   * The flow at which the most heat of the nameplate gives the rise seen while the heater ran
   * steadily in moving water, both taken at the end of their uncertainty that allows more; empty
   * where heat or rise is not known.
   */
  static OptionalDouble mostM3PerS(
      Timeline timeline, Rig rig, List<PhaseSpan> phases, Track waterMoves, Pair pair) {
    double[] rise = HeaterShare.rise(timeline, pair);
    double heatW = 0;
    double sumK = 0;
    int known = 0;
    for (PhaseSpan span : phases) {
      int from = timeline.firstAtOrAfter(span.startMs());
      int to = timeline.firstAtOrAfter(span.endMs());
      if (span.phase() == Phase.STEADY && from < to) {
        int before = known;
        for (int i = from; i < to; i++) {
          if (!Double.isNaN(rise[i]) && !waterMoves.no(i)) {
            sumK += rise[i];
            known++;
          }
        }
        if (known > before) {
          Estimate most = MostHeat.of(timeline, rig, from, to).orElse(null);
          if (most == null) {
            return OptionalDouble.empty();
          }
          heatW += (known - before) * (most.value() + most.expanded());
        }
      }
    }
    double leastK =
        known == 0 ? 0 : sumK / known - Estimate.COVERAGE_FACTOR * pair.ofRiseK(sumK / known);
    return leastK > 0
        ? OptionalDouble.of(heatW / known / (PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K * leastK))
        : OptionalDouble.empty();
  }
}
