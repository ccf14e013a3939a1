package heatwake.analysis.rule.airflow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.zero.Resolution;
import heatwake.analysis.zero.Zeroing;

/**
 * What the pair of water probes leaves open of a loss of heat, which is a fall of the rise over the
 * rise it fell from. Probes that show half kelvins make a fall of one step out of nothing, and a
 * pair that could not be zeroed makes a small rise, and so a great loss, of a larger one.
 *
 * @param fixedK standard uncertainty of every rise alike
 * @param digitsK standard uncertainty of the difference of two rises by the steps of their digits
 */
record RiseDoubt(double fixedK, double digitsK) {
  /** Expanded: a loss that is far beyond sound ones has to hold within its stated uncertainty. */
  private static final double COVERAGE = 2;

  static RiseDoubt of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return new RiseDoubt(0, 0);
    }
    double fixedK =
        Zeroing.pair(timeline, evidence.recording().rig(), Channel.WATER_OUT, evidence.zero())
            .systematicK();
    double stepK =
        Math.hypot(
            Resolution.of(timeline.of(Channel.WATER_IN)),
            Resolution.of(timeline.of(Channel.WATER_OUT)));
    // A step is rectangular, and there are two rises.
    return new RiseDoubt(fixedK, stepK * Math.sqrt(2.0 / 12));
  }

  /**
   * The part of the heat that is surely lost.
   *
   * @param loss part that seems lost
   * @param riseK rise that it was lost from; NaN where it is not known
   */
  double surely(double loss, double riseK) {
    return Double.isNaN(riseK)
        ? loss
        : (loss * riseK - COVERAGE * digitsK) / (riseK + COVERAGE * fixedK);
  }
}
