package heatwake.analysis.rule.airflow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
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
    double inK = evidence.recording().series().get(Channel.WATER_IN).smallestStep();
    double outK = evidence.recording().series().get(Channel.WATER_OUT).smallestStep();
    boolean both = Double.isFinite(inK) && Double.isFinite(outK);
    // A probe that never changed is taken to show the other's steps.
    double stepK = both ? Math.hypot(inK, outK) : Math.sqrt(2) * Math.min(inK, outK);
    // A step is rectangular, and there are two rises.
    return new RiseDoubt(fixedK, Double.isFinite(stepK) ? stepK * Math.sqrt(2.0 / 12) : 0);
  }

  /**
   * Whether more than a part of the heat is lost within the expanded uncertainty. What is compared
   * is the fall with that part of the rise it fell from, so the rises' common error counts by no
   * more than the part (GUM 5.1.2).
   *
   * @param loss part that seems lost
   * @param riseK rise that it was lost from; where it is not known nothing is left open
   */
  boolean leaves(double loss, double riseK, double limit) {
    double sureK = COVERAGE * Math.hypot(digitsK, limit * fixedK);
    return loss > limit && !((loss - limit) * riseK <= sureK);
  }
}
