package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;

/**
 * Moves compressor starts from where the draw passes the threshold to where the compressor began:
 * to where the draw left the fan's level, or rest; else to the foot of an inverter's climb.
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

  /**
   * How steep a step is, is seen over so long, and nearly over the time between readings (ours).
   */
  private static final double STEP_S = 3;

  /** Readings come a little sooner or later than usual (ours). */
  private static final double OF_INTERVAL = 0.8;

  /**
   * With readings this often a fan's lead of some seconds is seen to be flat, so that the way down
   * a soft start ends at it; with fewer, the way down would go through it to rest (ours).
   */
  private static final double OFTEN_S = 2;

  private final double[] draw;
  private final Track compressor;
  private final double mostOfFan;
  private final Timeline timeline;
  private final double intervalS;

  private StartEdges(Timeline timeline, Channel channel, Track compressor, double mostOfFan) {
    this.draw = timeline.of(channel);
    this.compressor = compressor;
    this.mostOfFan = mostOfFan;
    this.timeline = timeline;
    this.intervalS = timeline.intervalMs(channel) / 1e3;
  }

  /**
   * @param mostOfFan the most that a fan without a compressor draws
   */
  static void move(Timeline timeline, Channel channel, Track compressor, double mostOfFan) {
    new StartEdges(timeline, channel, compressor, mostOfFan).move();
  }

  private void move() {
    for (int i = 1; i < draw.length; i++) {
      if (compressor.yes(i) && compressor.no(i - 1)) {
        int last = lastOfFan(i);
        int foot = last < 0 || intervalS <= OFTEN_S ? footOfClimb(i) : i;
        int step = last < 0 ? i : middleOfStep(footOf(last));
        compressor.moveEdge(i, Math.min(foot, step));
      }
    }
  }

  /**
   * A step somewhere between two readings is placed halfway, which is where the line between them
   * has climbed half of it: at the first instant above that. Stops are placed likewise, at the
   * first instant below, so that a rest is no shorter than it was.
   */
  private int middleOfStep(int foot) {
    int to = Math.min(draw.length - 1, foot + timeline.instants(intervalS) + 1);
    double half = (draw[foot] + draw[to]) / 2;
    int k = foot;
    while (k + 1 < to && draw[k + 1] <= half) {
      k++;
    }
    return k + 1;
  }

  /**
   * The last instant before {@code i} at which the draw was no higher than a fan's; -1 without one.
   * An inverter may hold a slow speed for a while before it climbs, so that the threshold is passed
   * long after.
   */
  private int lastOfFan(int i) {
    int earliest = Math.max(1, i - timeline.instants(LONGEST_CLIMB_S));
    for (int k = i - 1; k >= earliest && compressor.no(k); k--) {
      if (draw[k] <= mostOfFan) {
        return k;
      }
    }
    return -1;
  }

  /** Goes down from the last instant of a fan's draw as long as it climbs there as steeply. */
  private int footOf(int last) {
    int wide = timeline.instants(Math.max(STEP_S, OF_INTERVAL * intervalS));
    return downTheClimb(last, wide, steepness(last, wide));
  }

  /** Goes down the climb to where it begins: there the draw has been flat. */
  private int footOfClimb(int i) {
    int wide = timeline.instants(Math.max(FOOT_S, FOOT_INTERVALS * intervalS));
    double steep = steepness(i, timeline.instants(Math.max(STEEP_S, 2 * intervalS)));
    return steep > 0 && i >= wide ? leavesLevel(downTheClimb(i, wide, steep), wide, i) : i;
  }

  /** Climb per instant over so many from one on. */
  private double steepness(int from, int over) {
    int ahead = Math.min(draw.length - 1, from + over);
    return (draw[ahead] - draw[from]) / Math.max(1, ahead - from);
  }

  /** Down from an instant as long as the draw climbs to it, over so many, not much less steeply. */
  private int downTheClimb(int from, int wide, double steep) {
    double flat = FLAT_SHARE * steep;
    int earliest = Math.max(wide, from - timeline.instants(LONGEST_CLIMB_S));
    int k = from;
    while (k > earliest && compressor.no(k - 1) && (draw[k] - draw[k - wide]) / wide > flat) {
      k--;
    }
    return k;
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
}
