package heatwake.analysis.timeline;

import heatwake.analysis.series.Series;
import java.util.Arrays;

/** The usual time between the readings of a channel. */
final class Interval {
  /** Taken for a channel with a single reading. */
  static final long OF_ONE_READING_MS = 60_000;

  private static final int MOST_SAMPLES = 2000;

  /**
   * Gaps below this share of the long ones are bursts (one message that carries several readings, a
   * buffer sent at once), not the pace of the probe; ours.
   */
  private static final int BURST_DIVISOR = 4;

  private Interval() {}

  /**
   * Median gap between readings, bursts left aside; at least 1 ms. Gaps are sampled evenly over the
   * series, so the cost does not grow with it.
   */
  static long usualMs(Series series) {
    int gaps = series.size() - 1;
    if (gaps < 1) {
      return OF_ONE_READING_MS;
    }
    int stride = Math.max(1, gaps / MOST_SAMPLES);
    long[] sample = new long[(gaps + stride - 1) / stride];
    for (int i = 0, k = 0; i < gaps; i += stride, k++) {
      sample[k] = series.timeMs(i + 1) - series.timeMs(i);
    }
    Arrays.sort(sample);
    long longOnes = sample[(int) (0.8 * (sample.length - 1))];
    int first = 0;
    while (sample[first] < longOnes / BURST_DIVISOR) {
      first++;
    }
    return Math.max(1, sample[first + (sample.length - first) / 2]);
  }
}
