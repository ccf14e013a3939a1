package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.BandSilences;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One time without a reading of a channel: from the last reading before to the first after. */
record Silence(Channel channel, long fromMs, long toMs) {
  /** A silence shorter than this is not worth a word, whatever the interval, s; ours. */
  private static final double JITTER_S = 60;

  /** So many silences of a length, or fewer, are not to be expected of chance in a run; ours. */
  private static final double UNEXPECTED = 0.01;

  /** A link that loses more than this share is not judged by chance alone; ours. */
  private static final double MOST_LOSSES = 0.3;

  /** Sources may take this long to be opened, s; ours. */
  private static final double OPENING_S = 120;

  /** Silences no longer than this many of the longest ordinary intervals are ordinary; ours. */
  private static final double ORDINARY = 2;

  /** The longest ordinary interval is the one that 99 in 100 do not exceed. */
  private static final double ORDINARY_SHARE = 0.99;

  private static final int MOST_SAMPLES = 4000;

  double lengthS() {
    return (toMs - fromMs) / 1e3;
  }

  /** Whether the dead band of its channel's readings explains it. */
  boolean isExplained(Series series, BandSilences silences) {
    boolean isAtAnEnd = toMs <= series.timeMs(0) || fromMs >= series.timeMs(series.size() - 1);
    return isAtAnEnd
        ? silences.explainEnd(fromMs, toMs)
        : silences.explain(series.firstAtOrAfter(fromMs));
  }

  /** Whether the other silence covers the same time, but for a few intervals at its ends. */
  boolean sharesTimeWith(Silence other) {
    long common = Math.min(toMs, other.toMs) - Math.max(fromMs, other.fromMs);
    return common > 0.7 * Math.max(toMs - fromMs, other.toMs - other.fromMs);
  }

  /** Every silence of a series within a run that is longer than its limit. */
  static List<Silence> in(Series series, long startMs, long endMs) {
    if (speaksOnChange(series)) {
      return List.of();
    }
    double limitMs = limitS(series) * 1000;
    List<Silence> found = new ArrayList<>();
    Channel channel = series.channel();
    if (series.timeMs(0) - startMs > Math.max(limitMs, OPENING_S * 1000)) {
      found.add(new Silence(channel, startMs, series.timeMs(0)));
    }
    found.addAll(between(series, limitMs));
    long last = series.timeMs(series.size() - 1);
    if (endMs - last > limitMs) {
      found.add(new Silence(channel, last, endMs));
    }
    return found;
  }

  /** The silences between two readings. */
  private static List<Silence> between(Series series, double limitMs) {
    List<Silence> beyondLimit = new ArrayList<>();
    for (int r = 1; r < series.size(); r++) {
      if (series.timeMs(r) - series.timeMs(r - 1) > limitMs) {
        beyondLimit.add(new Silence(series.channel(), series.timeMs(r - 1), series.timeMs(r)));
      }
    }
    if (beyondLimit.isEmpty()) {
      return beyondLimit;
    }
    double chanceMs = longestByChanceMs(series, limitMs);
    return beyondLimit.stream().filter(one -> one.toMs - one.fromMs > chanceMs).toList();
  }

  /** Longest silence that is none, s. */
  static double limitS(Series series) {
    double usualS = Timeline.usualIntervalMs(series) / 1e3;
    long[] intervals = intervals(series);
    double ordinaryS =
        intervals.length == 0
            ? 0
            : intervals[(int) (ORDINARY_SHARE * (intervals.length - 1))] / 1e3;
    return Math.max(
        JITTER_S, Math.max(Timeline.GAP_INTERVALS * usualS, ORDINARY * ordinaryS) + usualS / 2);
  }

  /**
   * The longest silence that single readings lost by chance explain: with a share p of them lost, a
   * hole of k readings is met N p^k times in N. The share is that of the holes within the limit, so
   * that a long silence does not excuse itself.
   */
  private static double longestByChanceMs(Series series, double limitMs) {
    double usualMs = Timeline.usualIntervalMs(series);
    long lost = 0;
    long sent = 0;
    for (int r = 1; r < series.size(); r++) {
      double interval = series.timeMs(r) - series.timeMs(r - 1);
      sent++;
      if (interval <= limitMs) {
        lost += Math.max(0, Math.round(interval / usualMs) - 1);
      }
    }
    double share = (double) lost / Math.max(1, lost + sent);
    if (share <= 0 || share > MOST_LOSSES) {
      return 0;
    }
    double readings = Math.log(UNEXPECTED / (lost + sent)) / Math.log(share);
    return (Math.ceil(readings) + 0.5) * usualMs;
  }

  private static long[] intervals(Series series) {
    int gaps = series.size() - 1;
    int stride = Math.max(1, gaps / MOST_SAMPLES);
    long[] sample = new long[gaps < 1 ? 0 : (gaps + stride - 1) / stride];
    for (int i = 0, k = 0; i < gaps; i += stride, k++) {
      sample[k] = series.timeMs(i + 1) - series.timeMs(i);
    }
    Arrays.sort(sample);
    return sample;
  }

  /**
   * A state that hardly ever repeats itself, or a value that never does and keeps no pace, is sent
   * on change: its silence says that nothing changed.
   */
  private static boolean speaksOnChange(Series series) {
    if (series.size() < 3) {
      return series.channel().quantity() == Quantity.STATE;
    }
    int repeats = 0;
    for (int r = 1; r < series.size(); r++) {
      if (series.value(r) == series.value(r - 1)) {
        repeats++;
      }
    }
    if (series.channel().quantity() == Quantity.STATE) {
      return repeats < 0.5 * (series.size() - 1);
    }
    long[] intervals = intervals(series);
    boolean keepsPace =
        intervals[(int) (0.9 * (intervals.length - 1))]
            <= 4 * Math.max(1, intervals[(int) (0.1 * (intervals.length - 1))]);
    return repeats == 0 && !keepsPace;
  }
}
