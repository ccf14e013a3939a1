package heatwake.collector.clock;

import java.util.Locale;

/**
 * A jump of the logger's clock.
 *
 * @param atMs run time from which it holds, UTC milliseconds
 * @param byMs size, positive when the clock was set forward
 * @param aheadMs how far the run's time is ahead of the clock since
 */
public record ClockStep(long atMs, long byMs, long aheadMs) {

  /** What it means for the run, in words. */
  public String text() {
    String what =
        "the logger's clock was set "
            + (byMs > 0 ? "forward by " : "back by ")
            + seconds(Math.abs(byMs));
    return aheadMs == 0
        ? what + "; the run follows it"
        : what
            + "; so as not to record one moment twice, the run's time is "
            + seconds(aheadMs)
            + " ahead of it from here";
  }

  private static String seconds(long ms) {
    return String.format(Locale.ROOT, "%.1f s", ms / 1000.0);
  }
}
