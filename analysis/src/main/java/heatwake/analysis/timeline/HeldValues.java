package heatwake.analysis.timeline;

import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;

/**
 * Readings of a value with a dead band, with those that were not sent because they were the same.
 */
final class HeldValues {
  private HeldValues() {}

  /**
   * The series with the value held at its pace through the silences that its band explains; itself
   * where it has none.
   */
  static Series of(Series series, Recording recording) {
    if (!hasSilences(series)) {
      return series;
    }
    return BandSilences.of(series, recording)
        .map(silences -> held(series, silences))
        .orElse(series);
  }

  private static boolean hasSilences(Series series) {
    long longestMs = Timeline.GAP_INTERVALS * Interval.usualMs(series);
    for (int r = 1; r < series.size(); r++) {
      if (series.timeMs(r) - series.timeMs(r - 1) > longestMs) {
        return true;
      }
    }
    return false;
  }

  private static Series held(Series series, BandSilences silences) {
    long paceMs = silences.paceMs();
    Series.Builder held = Series.of(series.channel());
    for (int r = 0; r < series.size(); r++) {
      held.add(series.timeMs(r), series.value(r));
      boolean isSilence =
          r + 1 < series.size() && series.timeMs(r + 1) - series.timeMs(r) > 2 * paceMs;
      if (isSilence && silences.explain(r)) {
        long last = series.timeMs(r + 1) - paceMs / 2;
        for (long at = series.timeMs(r) + paceMs; at < last; at += paceMs) {
          held.add(at, series.value(r));
        }
      }
    }
    return held.build();
  }
}
