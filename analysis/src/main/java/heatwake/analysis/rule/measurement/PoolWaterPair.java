package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Two probes in the same water: while the pump runs, the heater's inlet is the pool. If one stands
 * still to the last digit while the other goes on, the first is stuck.
 */
final class PoolWaterPair {
  /** The other must have gone this far, K; ours, well beyond noise. */
  private static final double GONE_ON_K = 0.5;

  /** And this many of the first one's digits, so that a coarse reading may stand; ours. */
  private static final double DIGITS = 3;

  /** Water must move for this share of the time; ours. */
  private static final double MOVING_SHARE = 0.95;

  /** Means at both ends are taken over this time, s; ours. */
  private static final double END_S = 300;

  private PoolWaterPair() {}

  /** How far the other probe in the same water went on meanwhile, K, if it did. */
  static Optional<Double> wentOnK(Timeline timeline, Track moves, Frozen frozen) {
    Channel other =
        switch (frozen.series().channel()) {
          case WATER_IN -> Channel.WATER_POOL;
          case WATER_POOL -> Channel.WATER_IN;
          default -> null;
        };
    if (other == null || !timeline.has(other)) {
      return Optional.empty();
    }
    int from = timeline.indexAt(frozen.fromMs());
    int to = timeline.indexAt(frozen.toMs());
    int moving = 0;
    for (int i = from; i < to; i++) {
      moving += moves.yes(i) ? 1 : 0;
    }
    if (moving < MOVING_SHARE * (to - from)) {
      return Optional.empty();
    }
    int end = timeline.instants(END_S);
    double[] values = timeline.of(other);
    double wentOnK =
        Math.abs(Stretch.mean(values, to - end, to) - Stretch.mean(values, from, from + end));
    return wentOnK > Math.max(GONE_ON_K, DIGITS * frozen.digitK())
        ? Optional.of(wentOnK)
        : Optional.empty();
  }

  /** By how much a pipe's water changed while it moved, K: between means over some minutes. */
  static double rangeK(Timeline timeline, IntPredicate moves, Channel channel, Frozen frozen) {
    int to = timeline.indexAt(frozen.toMs());
    int length = timeline.instants(END_S);
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = timeline.indexAt(frozen.fromMs()); i + length <= to; i += length) {
      double mean = Stretch.mean(timeline.of(channel), i, i + length);
      if (!Double.isNaN(mean) && moves.test(i) && moves.test(i + length)) {
        lowest = Math.min(lowest, mean);
        highest = Math.max(highest, mean);
      }
    }
    return highest - lowest;
  }
}
