package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A fan that draws more than the threshold for the compressor. It shows ahead of a start: flat and
 * low, until the compressor's climb begins.
 */
final class LeadingFan {
  /** A fan runs no longer than this before the compressor (common practice). */
  private static final double AHEAD_S = 180;

  /** A fan draws less than this share of the compressor (ours). */
  private static final double SHARE = 0.17;

  /** A draw this far above the fan's is no longer the fan alone (ours). */
  static final double ABOVE = 1.15;

  private LeadingFan() {}

  /**
   * The fan's usual draw, if it was seen ahead of starts.
   *
   * @param aboveThreshold where the draw is above the threshold
   */
  static OptionalDouble draw(
      Timeline timeline, Channel channel, Track aboveThreshold, DrawLevels levels) {
    double[] draw = timeline.of(channel);
    int settles = (int) Math.ceil(2 * timeline.intervalMs(channel) / 1e3 / timeline.stepS());
    int longest = (int) Math.ceil(AHEAD_S / timeline.stepS());
    double[] seen = new double[draw.length];
    int count = 0;
    for (int i = 1; i + settles < draw.length; i++) {
      if (aboveThreshold.yes(i) && aboveThreshold.no(i - 1)) {
        double level = draw[i + settles];
        boolean low = level < SHARE * levels.compressor();
        if (low && climbs(draw, i + settles, longest, aboveThreshold)) {
          seen[count++] = level;
        }
      }
    }
    Arrays.sort(seen, 0, count);
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(seen[count / 2]);
  }

  /** Whether the draw stays flat from {@code from} on and then climbs without falling back. */
  private static boolean climbs(double[] draw, int from, int longest, Track aboveThreshold) {
    double top = ABOVE * draw[from];
    int end = from;
    while (end < draw.length && end - from < longest && draw[end] < top) {
      end++;
    }
    return end < draw.length && end - from < longest && aboveThreshold.yes(end);
  }
}
