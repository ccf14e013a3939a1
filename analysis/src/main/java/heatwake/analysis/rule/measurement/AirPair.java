package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * The air that enters the coil is the outdoor air, less what returns of the heater's own: when the
 * outdoor air goes on for an hour, the entering air does not stay at one value to the last digit.
 */
final class AirPair {
  /** A shorter standstill is not judged, s; ours: a sheltered coil lags. */
  private static final double LEAST_S = 3600;

  /** The outdoor air must have gone this far, K; ours, well beyond noise. */
  private static final double GONE_ON_K = 1;

  /** And this many of the digits of the one that stands, so that a coarse reading may; ours. */
  private static final double DIGITS = 10;

  /** Means are taken over this time, s; ours: a gust passes. */
  private static final double MEAN_S = 900;

  private AirPair() {}

  /** How far the outdoor air went on while air-in stood, K, if it did. */
  static Optional<Double> wentOnK(Timeline timeline, Frozen frozen) {
    if (frozen.series().channel() != Channel.AIR_IN
        || !timeline.has(Channel.AIR_AMBIENT)
        || frozen.lengthS() < LEAST_S) {
      return Optional.empty();
    }
    double[] outdoor = timeline.of(Channel.AIR_AMBIENT);
    int length = timeline.instants(MEAN_S);
    int to = timeline.indexAt(frozen.toMs());
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = timeline.indexAt(frozen.fromMs()); i + length <= to; i += length) {
      double mean = Stretch.mean(outdoor, i, i + length);
      if (!Double.isNaN(mean)) {
        lowest = Math.min(lowest, mean);
        highest = Math.max(highest, mean);
      }
    }
    double wentOnK = highest - lowest;
    return wentOnK > Math.max(GONE_ON_K, DIGITS * frozen.digitK())
        ? Optional.of(wentOnK)
        : Optional.empty();
  }
}
