package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.List;
import java.util.Optional;

/**
 * The silences of a value with a dead band: which of them only say that it kept within the band,
 * and which that something was lost.
 */
public final class BandSilences {
  /** A change of so many usual ones is within the dead band; ours. */
  private static final double WITHIN = 2;

  /** A probe's clock lets it keep silent by so much longer than usual; ours. */
  private static final double LONGER = 1.1;

  /**
   * So long such a channel may well say nothing, whatever ends it, ms; common practice: a sign of
   * life every 10 to 60 min.
   */
  private static final double QUIET_MS = 600_000;

  private final Series series;
  private final DeadBand band;
  private final Recording recording;
  private double longestQuietMs = -1;
  private Boolean othersHaveBands;

  private BandSilences(Series series, DeadBand band, Recording recording) {
    this.series = series;
    this.band = band;
    this.recording = recording;
  }

  /**
   * Those of a series of a run; empty where it has no dead band, or too few readings to tell.
   *
   * @param recording all that was read in the run
   */
  public static Optional<BandSilences> of(Series series, Recording recording) {
    return DeadBand.of(series).map(band -> new BandSilences(series, band, recording));
  }

  /**
   * Whether a silence only says that the value kept within its band: the logger lived, since others
   * were read meanwhile, or may have, since all others have bands too.
   *
   * @param before the reading before it
   */
  public boolean explain(int before) {
    long fromMs = series.timeMs(before);
    long toMs = series.timeMs(before + 1);
    return (isWithin(before) || toMs - fromMs <= LONGER * longestQuietMs())
        && (isHeardBeside(fromMs, toMs)
            || (toMs - fromMs <= LONGER * QUIET_MS && othersHaveBands()));
  }

  /** Whether a silence before the first reading or after the last one is none. */
  public boolean explainEnd(long fromMs, long toMs) {
    return toMs - fromMs <= LONGER * QUIET_MS;
  }

  /** Time between two looks at the value, ms. */
  long paceMs() {
    return band.paceMs();
  }

  private boolean othersHaveBands() {
    if (othersHaveBands == null) {
      List<Series> others =
          recording.series().values().stream()
              .filter(other -> other.channel() != series.channel())
              .filter(other -> other.channel().quantity() != Quantity.STATE)
              .toList();
      othersHaveBands =
          !others.isEmpty()
              && others.stream()
                  .allMatch(other -> DeadBand.of(other).isPresent() || !isPaced(other));
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
    return longer <= (1 - DeadBand.LIFE_SHARE) * series.size() && longestMs < QUIET_MS;
  }

  private boolean isWithin(int before) {
    return Math.abs(series.value(before + 1) - series.value(before)) <= WITHIN * band.usualChange();
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

  private boolean isHeardBeside(long fromMs, long toMs) {
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
}
