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
  static final double SHARE = 0.17;

  /** Or of a small compressor this, where its effect is seen and is not there yet (ours). */
  private static final double SHARE_WITHOUT_EFFECT = 0.4;

  /** It is flat within this share, so long and for so many readings (ours). */
  private static final double FLAT = 0.04;

  private static final double FLAT_S = 6;
  private static final int FLAT_INTERVALS = 3;

  /** A heater at rest draws less than this share of its fan (ours). */
  static final double REST_OF_FAN = 0.5;

  /** A draw this far above the fan's is no longer the fan alone (ours). */
  static final double ABOVE = 1.15;

  private final double[] draw;
  private final CompressorEffect effect;
  private final double compressor;
  private final int longest;
  private final int flat;
  private final int interval;

  private LeadingFan(
      Timeline timeline, Channel channel, CompressorEffect effect, double compressor) {
    this.draw = timeline.of(channel);
    this.effect = effect;
    this.compressor = compressor;
    this.longest = timeline.instants(AHEAD_S);
    double intervalS = timeline.intervalMs(channel) / 1e3;
    double flatS = Math.max(FLAT_S, FLAT_INTERVALS * intervalS);
    this.interval = timeline.instants(Math.max(FLAT_S / FLAT_INTERVALS, intervalS));
    this.flat = timeline.instants(flatS);
  }

  /**
   * The fan's usual draw, if it was seen ahead of starts.
   *
   * @param aboveThreshold where the draw is above the threshold
   */
  static OptionalDouble draw(
      Timeline timeline,
      Channel channel,
      Track aboveThreshold,
      DrawLevels levels,
      CompressorEffect effect) {
    return new LeadingFan(timeline, channel, effect, levels.compressor()).draw(aboveThreshold);
  }

  private OptionalDouble draw(Track aboveThreshold) {
    double[] seen = new double[draw.length];
    int count = 0;
    for (int i = 1; i < draw.length; i++) {
      if (aboveThreshold.yes(i) && aboveThreshold.no(i - 1)) {
        int from = i + flat / FLAT_INTERVALS;
        int end = flatUntil(from);
        boolean climbs = end - from >= flat && end < draw.length && aboveThreshold.yes(end);
        if (climbs && !followsFan(i) && isFan(draw[from], from, end)) {
          seen[count++] = draw[from];
        }
      }
    }
    Arrays.sort(seen, 0, count);
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(seen[count / 2]);
  }

  /**
   * Whether the draw had stepped from rest to a low level just before, and stayed there for longer
   * than the line from one reading to the next: then that was the fan, and what follows is a
   * compressor that holds a slow speed before it climbs.
   */
  private boolean followsFan(int i) {
    int earliest = Math.max(0, i - longest);
    double rest = Double.POSITIVE_INFINITY;
    for (int k = earliest; k < i; k++) {
      rest = draw[k] < rest ? draw[k] : rest;
    }
    int first = i;
    while (first > earliest
        && draw[first - 1] * REST_OF_FAN > rest
        && draw[first - 1] < SHARE * compressor) {
      first--;
    }
    return first > earliest && i - first > interval;
  }

  private int flatUntil(int from) {
    int end = from;
    while (end < draw.length
        && end - from < longest
        && Math.abs(draw[end] - draw[from]) <= FLAT * draw[from]) {
      end++;
    }
    return end - from < longest ? end : draw.length;
  }

  private boolean isFan(double level, int from, int end) {
    return level < SHARE * compressor
        || (level < SHARE_WITHOUT_EFFECT * compressor && effect.isNoneBetween(from, end));
  }
}
