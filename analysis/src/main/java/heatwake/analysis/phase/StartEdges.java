package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;

/**
 * Moves compressor starts from where the draw passes the threshold to where the compressor began:
 * to the foot of an inverter's climb, and past a fan that draws a little more than the threshold.
 */
final class StartEdges {
  /** A soft start reaches twice the threshold within this time (common practice). */
  private static final double CLIMB_S = 90;

  /**
   * A climb between threshold and twice the threshold that takes this long is a soft start (ours).
   */
  private static final double SOFT_S = 5;

  /** Nor is the time between readings taken for a climb (ours). */
  private static final int SOFT_INTERVALS = 2;

  /** A fan runs no longer than this before the compressor (common practice). */
  private static final double FAN_AHEAD_S = 180;

  /** A fan draws less than this share of the compressor (ours). */
  private static final double FAN_SHARE = 0.17;

  /** A draw this far above the fan's is no longer the fan alone (ours). */
  private static final double ABOVE_FAN = 1.15;

  private final double[] draw;
  private final Track compressor;
  private final DrawLevels levels;
  private final double stepS;
  private final double intervalS;

  private StartEdges(Timeline timeline, Channel channel, Track compressor, DrawLevels levels) {
    this.draw = timeline.of(channel);
    this.compressor = compressor;
    this.levels = levels;
    this.stepS = timeline.stepS();
    this.intervalS = timeline.intervalMs(channel) / 1e3;
  }

  static void move(Timeline timeline, Channel channel, Track compressor, DrawLevels levels) {
    new StartEdges(timeline, channel, compressor, levels).move();
  }

  private void move() {
    for (int i = 1; i < draw.length; i++) {
      if (compressor.yes(i) && compressor.no(i - 1)) {
        int fanEnds = fanEnds(i);
        if (fanEnds > i) {
          compressor.fill(i, fanEnds, Track.NO);
          i = fanEnds;
        } else {
          backdate(i);
        }
      }
    }
  }

  /** Where a flat low draw after a start ends and a climb begins; {@code i} if there is none. */
  private int fanEnds(int i) {
    int settled = i + (int) Math.ceil(2 * intervalS / stepS);
    if (settled >= draw.length || !(draw[settled] < FAN_SHARE * levels.compressor())) {
      return i;
    }
    double level = draw[settled];
    int longest = i + (int) Math.ceil(FAN_AHEAD_S / stepS);
    int end = settled;
    while (end < Math.min(draw.length, longest) && draw[end] < ABOVE_FAN * level) {
      end++;
    }
    return end < Math.min(draw.length, longest) && compressor.yes(end) ? end : i;
  }

  /** The line of the climb from threshold to twice the threshold meets the level before. */
  private void backdate(int i) {
    int longest = (int) Math.ceil(CLIMB_S / stepS);
    int least = (int) Math.ceil(Math.max(SOFT_S, SOFT_INTERVALS * intervalS) / stepS);
    int twice = i;
    while (twice < draw.length
        && twice - i <= longest
        && !(draw[twice] >= 2 * levels.threshold())) {
      twice++;
    }
    int climb = twice - i;
    if (climb < least || climb > longest || twice == draw.length) {
      return;
    }
    double level = draw[Math.max(0, i - 2 * climb)];
    double share = Double.isNaN(level) ? 1 : Math.max(0, 1 - level / levels.threshold());
    int foot = Math.max(0, i - (int) Math.round(climb * share));
    while (foot < i && !compressor.no(foot)) {
      foot++;
    }
    compressor.fill(foot, i, Track.YES);
  }
}
