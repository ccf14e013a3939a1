package heatwake.analysis.zero;

import heatwake.analysis.quantity.Channel;

/**
 * Two temperature probes as their difference is used: hot minus {@code water-in}, less the offset.
 *
 * @param hot the warmer probe, {@code water-out} or {@code water-return}
 * @param offsetK subtracted from the difference; zero if no zero could be taken
 * @param systematicK standard uncertainty of the difference that averaging does not shrink
 * @param gainShare further systematic part, as a share of the difference
 * @param ofInK the part of {@code systematicK} that comes from {@code water-in}, and so is the same
 *     in every pair it belongs to
 */
public record Pair(
    Channel hot, double offsetK, double systematicK, double gainShare, double ofInK) {
  /** Systematic standard uncertainty of a mean rise. */
  public double ofRiseK(double riseK) {
    return Math.hypot(systematicK, gainShare * riseK);
  }
}
