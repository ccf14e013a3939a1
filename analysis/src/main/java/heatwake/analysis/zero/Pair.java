package heatwake.analysis.zero;

import heatwake.analysis.quantity.Channel;

/**
 * Two temperature probes as their difference is used: hot minus {@code water-in}, less the offset.
 *
 * @param hot the warmer probe, {@code water-out} or {@code water-return}
 * @param offsetK subtracted from the difference; zero if no zero could be taken
 * @param systematicK standard uncertainty of the difference that averaging does not shrink
 * @param gainShare further systematic part, as a share of the difference
 */
public record Pair(Channel hot, double offsetK, double systematicK, double gainShare) {
  /** Systematic standard uncertainty of a mean rise. */
  public double ofRiseK(double riseK) {
    return Math.hypot(systematicK, gainShare * riseK);
  }
}
