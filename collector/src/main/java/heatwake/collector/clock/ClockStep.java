package heatwake.collector.clock;

import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A jump of the logger's clock.
 *
 * @param atMs run time from which it holds, UTC milliseconds
 * @param byMs size, positive when the clock was set forward
 * @param aheadMs how far the run's time is ahead of the clock since
 */
public record ClockStep(long atMs, long byMs, long aheadMs) {
  private static final Pattern SIZE = Pattern.compile("clock was set \\w+ by (\\d+(?:\\.\\d+)?) s");

  /** Size of a step, whichever way, from its {@link #text}; empty if the text tells none. */
  public static OptionalLong sizeMs(String text) {
    Matcher size = SIZE.matcher(text);
    return size.find()
        ? OptionalLong.of(Math.round(Double.parseDouble(size.group(1)) * 1000))
        : OptionalLong.empty();
  }

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
