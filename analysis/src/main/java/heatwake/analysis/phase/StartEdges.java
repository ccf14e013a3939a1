package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;

/**
 * Moves compressor starts from where the draw passes the threshold to where the compressor began:
 * to the foot of an inverter's climb, and past a fan that draws a little more than the threshold.
 */
final class StartEdges {
  /** A soft start takes no longer from its foot to the threshold (common practice). */
  private static final double LONGEST_CLIMB_S = 300;

  /** How steep a climb is, is seen over so long after the threshold (ours). */
  private static final double STEEP_S = 10;

  /** And where it begins, over so long (ours). */
  private static final double FOOT_S = 5;

  /** Nor is the time between readings taken for a climb (ours). */
  private static final int FOOT_INTERVALS = 2;

  /** Before its foot the draw climbs less than this share as steeply (ours). */
  private static final double FLAT_SHARE = 0.25;

  /** So much of the way to the threshold is not the level before it any more (ours). */
  private static final double LEAVES_SHARE = 0.03;

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

  /** Goes down the climb to where it begins: there the draw has been flat. */
  private void backdate(int i) {
    int wide = instants(Math.max(FOOT_S, FOOT_INTERVALS * intervalS));
    int ahead = Math.min(draw.length - 1, i + instants(Math.max(STEEP_S, 2 * intervalS)));
    double steep = (draw[ahead] - draw[i]) / Math.max(1, ahead - i);
    if (!(steep > 0) || i < wide) {
      return;
    }
    double flat = FLAT_SHARE * steep;
    int earliest = Math.max(wide, i - instants(LONGEST_CLIMB_S));
    int k = i;
    while (k > earliest && compressor.no(k - 1) && (draw[k] - draw[k - wide]) / wide > flat) {
      k--;
    }
    compressor.fill(leavesLevel(k, wide, i), i, Track.YES);
  }

  /** First instant on the way up to {@code i} above what the draw was before {@code k}. */
  private int leavesLevel(int k, int wide, int i) {
    double level = Stretch.mean(draw, k - wide, k);
    double off = 0;
    for (int j = k - wide; j < k; j++) {
      off = Double.isNaN(draw[j]) ? off : Math.max(off, Math.abs(draw[j] - level));
    }
    double above = level + Math.max(2 * off, LEAVES_SHARE * (draw[i] - level));
    int foot = i;
    while (foot > k && compressor.no(foot - 1) && !(draw[foot - 1] <= above)) {
      foot--;
    }
    return foot;
  }

  private int instants(double seconds) {
    return (int) Math.ceil(seconds / stepS);
  }
}
