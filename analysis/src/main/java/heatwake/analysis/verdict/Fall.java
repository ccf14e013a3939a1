package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.finding.Flag;

/**
 * A flow that falls, against which others are held: what was there before the fall can have brought
 * it is not its consequence.
 *
 * @param flag in which it is told
 */
record Fall(Flag flag) {
  /** Part of a fall after which what begins is its consequence; ours. */
  private static final double CAME_TO_IT = 0.1;

  /** A stretch that ends within this part of a fall had most of the flow; ours. */
  static final double AT_ITS_BEGINNING = 0.4;

  /** Whether another flag began when the flow had fallen for a while. */
  boolean mayHaveBrought(Flag other) {
    return other.startMs() > flag.startMs() + shortMs();
  }

  /** Whether a stretch of running had most of the flow. */
  boolean hadTheFlow(Duty stretch) {
    return stretch.endMs() - flag.startMs() < AT_ITS_BEGINNING * lengthMs();
  }

  /** So long after the beginning is as good as at it, milliseconds. */
  double shortMs() {
    return CAME_TO_IT * lengthMs();
  }

  private long lengthMs() {
    return flag.endMs() - flag.startMs();
  }
}
