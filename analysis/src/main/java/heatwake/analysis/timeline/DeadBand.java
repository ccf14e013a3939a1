package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Series;
import java.util.Arrays;
import java.util.Optional;

/**
 * The dead band of a value that is sent when it has left it, counted from the value sent last, and
 * now and then besides: noisy while the heater runs, still while it rests. Its readings hardly ever
 * repeat themselves and hardly ever change by little; the noise of a paced reading does one or the
 * other. While such a channel is silent its value keeps within the band ({@link BandSilences}).
 *
 * @param usualChange the usual change between two readings, in the unit of the series
 * @param paceMs time between two looks at the value, ms
 */
record DeadBand(double usualChange, long paceMs) {
  /** Share of repeats up to which a channel is sent on change; ours. */
  private static final double REPEATS = 0.05;

  /** Where there are few changes, so large a part of them is looked at for the least; ours. */
  private static final double FEW_SHARE = 0.1;

  /** It is no smaller than this part of the usual change; normal noise: 0.19. */
  private static final double FEW_OF_USUAL = 0.3;

  /** Where there are many, this part; ours. */
  private static final double MANY_SHARE = 0.03;

  /** And that is no smaller than this part of the usual change; normal noise: 0.06. */
  private static final double MANY_OF_USUAL = 0.12;

  /** So many changes tell chance from a band; ours. */
  private static final int MANY = 60;

  /** Changes needed to know the band; ours. */
  private static final int ENOUGH = 20;

  /** A silence up to this length is an ordinary interval, whatever the pace, ms; ours. */
  private static final long ORDINARY_MS = 60_000;

  /** The shortest intervals are the pace at which the value is looked at. */
  private static final double PACE_SHARE = 0.1;

  /** A sign of life comes at the longest interval, seen at least this often. */
  static final double LIFE_SHARE = 0.99;

  /** It is told from the pace by so many times as long; ours. */
  private static final double LIFE_OF_PACE = 5;

  /** It comes about that late; ours. */
  private static final double ABOUT = 0.9;

  private static final int MOST_SAMPLES = 4000;

  /** The dead band of a series; empty where it has none, or too few readings to tell. */
  static Optional<DeadBand> of(Series series) {
    if (series.channel().quantity() == Quantity.STATE || series.channel() == Channel.ENERGY) {
      return Optional.empty();
    }
    int gaps = series.size() - 1;
    int stride = Math.max(1, gaps / MOST_SAMPLES);
    int samples = gaps < 1 ? 0 : (gaps + stride - 1) / stride;
    if (samples < ENOUGH) {
      return Optional.empty();
    }
    long[] intervals = new long[samples];
    for (int k = 0; k < samples; k++) {
      intervals[k] = series.timeMs(k * stride + 1) - series.timeMs(k * stride);
    }
    Arrays.sort(intervals);
    long pace = Math.max(1, intervals[(int) (PACE_SHARE * (samples - 1))]);
    long life = intervals[(int) (LIFE_SHARE * (samples - 1))];
    double ordinaryMs =
        Math.max(ORDINARY_MS, (double) Timeline.GAP_INTERVALS * intervals[samples / 2]);
    double limitMs = life > LIFE_OF_PACE * pace ? Math.min(ordinaryMs, ABOUT * life) : ordinaryMs;
    double usual = usualChange(series, stride, limitMs);
    return usual > 0 ? Optional.of(new DeadBand(usual, pace)) : Optional.empty();
  }

  /** The usual change of a series that is sent on change; 0 of another. */
  private static double usualChange(Series series, int stride, double limitMs) {
    double[] changes = new double[(series.size() - 1) / stride + 1];
    int count = 0;
    int repeats = 0;
    for (int r = 1; r < series.size(); r += stride) {
      if (series.timeMs(r) - series.timeMs(r - 1) < limitMs) {
        double change = Math.abs(series.value(r) - series.value(r - 1));
        repeats += change == 0 ? 1 : 0;
        changes[count++] = change;
      }
    }
    if (count < ENOUGH || repeats > REPEATS * count) {
      return 0;
    }
    Arrays.sort(changes, 0, count);
    double usual = changes[count / 2];
    boolean isBand =
        changes[(int) (FEW_SHARE * count)] >= FEW_OF_USUAL * usual
            || (count >= MANY && changes[(int) (MANY_SHARE * count)] >= MANY_OF_USUAL * usual);
    return isBand ? usual : 0;
  }
}
