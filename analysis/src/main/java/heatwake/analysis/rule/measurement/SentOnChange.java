package heatwake.analysis.rule.measurement;

import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.Arrays;

/**
 * A value that is sent when it has left a dead band about the one sent last, and now and then
 * besides: noisy while the heater runs, still while it rests. Its readings hardly ever repeat
 * themselves and hardly ever change by little; the noise of a paced reading does one or the other.
 */
final class SentOnChange {
  /** Share of repeats up to which a channel is sent on change; ours. */
  private static final double REPEATS = 0.05;

  /** The 10 % least changes are no smaller than this part of the usual; normal noise: 0.19. */
  private static final double LEAST_OF_USUAL = 0.3;

  /** A change of so many usual ones is within the dead band; ours. */
  private static final double WITHIN = 2;

  /** A probe's clock lets it keep silent by so much longer than usual; ours. */
  private static final double LONGER = 1.1;

  /** Changes needed to know the band; ours. */
  private static final int ENOUGH = 20;

  private SentOnChange() {}

  /**
   * Whether a silence only says that the value kept within its dead band while others were read.
   *
   * @param limitS longest interval that is no silence, s
   */
  static boolean explains(Silence silence, Recording recording, double limitS) {
    Series series = recording.series().get(silence.channel());
    int after = series.firstAtOrAfter(silence.toMs());
    int before = series.firstAtOrAfter(silence.fromMs());
    if (after >= series.size() || before >= after || series.timeMs(before) != silence.fromMs()) {
      return false;
    }
    double usual = usualChange(series, limitS);
    return usual > 0
        && isHeardBeside(silence, recording)
        && (isWithin(series, before, after, usual)
            || silence.toMs() - silence.fromMs() <= LONGER * longestQuietMs(series, usual, limitS));
  }

  private static boolean isWithin(Series series, int before, int after, double usual) {
    return Math.abs(series.value(after) - series.value(before)) <= WITHIN * usual;
  }

  /**
   * The longest time for which the value kept within its dead band: so long it may well say
   * nothing, also where a change then ended it.
   */
  private static double longestQuietMs(Series series, double usual, double limitS) {
    double longest = limitS * 1e3;
    for (int r = 1; r < series.size(); r++) {
      double ms = series.timeMs(r) - series.timeMs(r - 1);
      if (ms > longest && isWithin(series, r - 1, r, usual)) {
        longest = ms;
      }
    }
    return longest;
  }

  private static boolean isHeardBeside(Silence silence, Recording recording) {
    Series series = recording.series().get(silence.channel());
    return recording.series().values().stream()
        .anyMatch(other -> other != series && speaksThroughout(other, silence));
  }

  /** The usual change of a series that is sent on change; 0 of another. */
  private static double usualChange(Series series, double limitS) {
    double[] changes = new double[series.size()];
    int count = 0;
    int repeats = 0;
    for (int r = 1; r < series.size(); r++) {
      if (series.timeMs(r) - series.timeMs(r - 1) <= limitS * 1e3) {
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
    // Twice as many as may be repeats.
    double least = changes[Math.min(count - 1, (int) (2 * REPEATS * count))];
    return least >= LEAST_OF_USUAL * usual ? usual : 0;
  }

  /** Whether another channel was read in each third of a silence. */
  private static boolean speaksThroughout(Series other, Silence silence) {
    long third = (silence.toMs() - silence.fromMs()) / 3;
    for (int k = 0; k < 3; k++) {
      long from = silence.fromMs() + k * third;
      int first = other.firstAtOrAfter(from + 1);
      if (first >= other.size() || other.timeMs(first) >= from + third) {
        return false;
      }
    }
    return true;
  }
}
