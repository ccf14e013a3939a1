package heatwake.analysis.heat;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.zero.Pair;
import heatwake.analysis.zero.Zeroing;

/**
 * Whether the pair tells, beyond its uncertainty, that the heater cools the water over the whole
 * run (a defrost does so for minutes only): then it is the pair that errs.
 */
final class SeemsToCool {
  /** A mean rise this far below zero is no scatter; ours. */
  private static final double COOLING_K = 0.2;

  /**
   * The same over all moving water, where nothing tells when the compressor runs; the smallest rise
   * of a pool heater is about this (common practice), and probes in one water differ by less.
   */
  private static final double COOLING_ALL_ALONG_K = 1;

  private SeemsToCool() {}

  /** The sentence to say so is the caller's. */
  static boolean tells(Timeline timeline, Phases phases, Pair pair, double[] riseK) {
    double open = Estimate.COVERAGE_FACTOR * pair.systematicK();
    if (Zeroing.restIsSeen(timeline)) {
      boolean[] runs = runs(timeline, phases);
      return Stretch.meanWhere(riseK, i -> runs[i]) < -Math.max(COOLING_K, open);
    }
    Track moves = WaterMovement.of(timeline);
    return Stretch.meanWhere(riseK, moves::yes) < -Math.max(COOLING_ALL_ALONG_K, open);
  }

  private static boolean[] runs(Timeline timeline, Phases phases) {
    boolean[] runs = new boolean[timeline.size()];
    for (PhaseSpan span : phases.spans()) {
      if (span.phase() == Phase.STARTING || span.phase() == Phase.STEADY) {
        int to = timeline.firstAtOrAfter(span.endMs());
        for (int i = timeline.firstAtOrAfter(span.startMs()); i < to; i++) {
          runs[i] = true;
        }
      }
    }
    return runs;
  }
}
