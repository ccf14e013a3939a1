package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The dead band of a value that is sent when it has left it, counted from the value sent last, and
 * now and then besides: noisy while the heater runs, still while it rests. Its readings hardly ever
 * repeat themselves and hardly ever change by little; the noise of a paced reading does one or the
 * other. While such a channel is silent its value keeps within the band.
 */
public final class DeadBand {
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

  /** A change of so many usual ones is within the dead band; ours. */
  private static final double WITHIN = 2;

  /** A probe's clock lets it keep silent by so much longer than usual; ours. */
  private static final double LONGER = 1.1;

  /** A silence up to this length is an ordinary interval, whatever the pace, ms; ours. */
  private static final long ORDINARY_MS = 60_000;

  /**
   * So long such a channel may well say nothing, whatever ends it, ms; common practice: a sign of
   * life every 10 to 60 min.
   */
  private static final double QUIET_MS = 600_000;

  /** The shortest intervals are the pace at which the value is looked at. */
  private static final double PACE_SHARE = 0.1;

  /** A sign of life comes at the longest interval, seen at least this often. */
  private static final double LIFE_SHARE = 0.99;

  /** It is told from the pace by so many times as long; ours. */
  private static final double LIFE_OF_PACE = 5;

  /** It comes about that late; ours. */
  private static final double ABOUT = 0.9;

  private static final int MOST_SAMPLES = 4000;

  private final Series series;
  private final double usualChange;
  private final long paceMs;
  private double longestQuietMs = -1;
  private Boolean othersHaveBands;

  private DeadBand(Series series, double usualChange, long paceMs) {
    this.series = series;
    this.usualChange = usualChange;
    this.paceMs = paceMs;
  }

  /** The dead band of a series; empty where it has none, or too few readings to tell. */
  public static Optional<DeadBand> of(Series series) {
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
    return usual > 0 ? Optional.of(new DeadBand(series, usual, pace)) : Optional.empty();
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

  /**
   * Whether a silence only says that the value kept within its band: the logger lived, since others
   * were read meanwhile, or may have, since all others have bands too.
   *
   * @param before the reading before it
   */
  public boolean explains(int before, Recording recording) {
    long fromMs = series.timeMs(before);
    long toMs = series.timeMs(before + 1);
    return (isWithin(before) || toMs - fromMs <= LONGER * longestQuietMs())
        && (isHeardBeside(fromMs, toMs, recording)
            || (toMs - fromMs <= LONGER * QUIET_MS && othersHaveBands(recording)));
  }

  /** Whether a silence before the first reading or after the last one is none. */
  public boolean explainsEnd(long fromMs, long toMs) {
    return toMs - fromMs <= LONGER * QUIET_MS;
  }

  private boolean othersHaveBands(Recording recording) {
    if (othersHaveBands == null) {
      List<Series> others =
          recording.series().values().stream()
              .filter(other -> other.channel() != series.channel())
              .filter(other -> other.channel().quantity() != Quantity.STATE)
              .toList();
      othersHaveBands =
          !others.isEmpty()
              && others.stream().allMatch(other -> of(other).isPresent() || !isPaced(other));
    }
    return othersHaveBands;
  }

  /**
   * Whether nearly all intervals are usual ones, and short enough to bear witness; one with too few
   * readings to show a band may still have one.
   */
  private static boolean isPaced(Series series) {
    long longestMs = Timeline.GAP_INTERVALS * Interval.usualMs(series);
    int longer = 0;
    for (int r = 1; r < series.size(); r++) {
      longer += series.timeMs(r) - series.timeMs(r - 1) > longestMs ? 1 : 0;
    }
    return longer <= (1 - LIFE_SHARE) * series.size() && longestMs < QUIET_MS;
  }

  private boolean isWithin(int before) {
    return Math.abs(series.value(before + 1) - series.value(before)) <= WITHIN * usualChange;
  }

  /**
   * The longest time for which the value kept within its band: so long it may well say nothing,
   * also where a change then ended it.
   */
  private double longestQuietMs() {
    if (longestQuietMs < 0) {
      longestQuietMs = QUIET_MS;
      for (int r = 0; r + 1 < series.size(); r++) {
        double ms = series.timeMs(r + 1) - series.timeMs(r);
        if (ms > longestQuietMs && isWithin(r)) {
          longestQuietMs = ms;
        }
      }
    }
    return longestQuietMs;
  }

  private boolean isHeardBeside(long fromMs, long toMs, Recording recording) {
    return recording.series().values().stream()
        .anyMatch(
            other -> other.channel() != series.channel() && speaksThroughout(other, fromMs, toMs));
  }

  /** Whether another channel was read in each third of a silence. */
  private static boolean speaksThroughout(Series other, long fromMs, long toMs) {
    long third = (toMs - fromMs) / 3;
    for (int k = 0; k < 3; k++) {
      long from = fromMs + k * third;
      int first = other.firstAtOrAfter(from + 1);
      if (first >= other.size() || other.timeMs(first) >= from + third) {
        return false;
      }
    }
    return true;
  }

  /** Time between two looks at the value, ms. */
  long paceMs() {
    return paceMs;
  }
}
