package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.function.IntUnaryOperator;

/**
 * Moves compressor starts from where the draw passes the threshold to where the compressor began:
 * to where the draw left the level of the fan, or of rest, whether by a step or by an inverter's
 * soft start.
 */
final class StartEdges {
  /** A soft start takes no longer from its foot to the threshold (common practice). */
  private static final double LONGEST_CLIMB_S = 300;

  /**
   * With readings this often a fan's lead of some seconds is seen to be flat, so that the way down
   * a soft start ends at it; with fewer, the way down would go through it to rest (ours).
   */
  private static final double OFTEN_S = 2.5;

  /** Whether the draw climbs is seen over so long, and nearly over a reading (ours). */
  private static final double CLIMB_S = 3;

  /**
   * Whether it climbs slowly is seen from the means of two halves of so long; a fan that leads is
   * mostly flat for longer (ours).
   */
  private static final double SLOW_CLIMB_S = 8;

  /** So much of the way to the threshold, from half to half, is a slow climb (ours). */
  private static final double SLOW_SHARE = 0.0015;

  /** Readings come a little sooner or later than usual (ours). */
  private static final double OF_INTERVAL = 0.8;

  /** So much of the way to the threshold is not the level before it any more (ours). */
  private static final double LEAVES_SHARE = 0.01;

  /** With seldom readings a step to the fan climbs less than this share as steeply (ours). */
  private static final double FLAT_SHARE = 0.25;

  private final double[] draw;
  private final Track compressor;
  private final double mostOfFan;
  private final Timeline timeline;
  private final double intervalS;
  private final int wide;
  private final int half;

  private StartEdges(Timeline timeline, Channel channel, Track compressor, double mostOfFan) {
    this.draw = timeline.of(channel);
    this.compressor = compressor;
    this.mostOfFan = mostOfFan;
    this.timeline = timeline;
    this.intervalS = timeline.intervalMs(channel) / 1e3;
    this.wide = timeline.instants(Math.max(CLIMB_S, OF_INTERVAL * intervalS));
    this.half = timeline.instants(SLOW_CLIMB_S / 2);
  }

  /**
   * @param mostOfFan the most that a fan without a compressor draws
   */
  static void move(Timeline timeline, Channel channel, Track compressor, double mostOfFan) {
    new StartEdges(timeline, channel, compressor, mostOfFan).move();
  }

  private void move() {
    if (intervalS <= OFTEN_S) {
      Wandering wandering = Wandering.of(draw, compressor, wide, this::climb);
      Wandering slow = Wandering.of(draw, compressor, 2 * half, this::slowClimb);
      moveTo(i -> beginsToCrawl(leavesLevel(lastOfFan(i), i, wandering) - 1, i, slow));
    } else {
      moveTo(i -> middleOfStep(footOf(lastOfFan(i))));
    }
  }

  /** Moves each start, given as the instant that passes the threshold, to where it began. */
  private void moveTo(IntUnaryOperator began) {
    for (int i = 1; i < draw.length; i++) {
      if (compressor.yes(i) && compressor.no(i - 1)) {
        compressor.moveEdge(i, Math.min(i, began.applyAsInt(i)));
      }
    }
  }

  private double climb(int k) {
    return draw[k] - draw[k - wide];
  }

  /** From half to half of the slow look that ends at {@code k}. */
  private double slowClimb(int k) {
    double climbed = 0;
    for (int j = 0; j < half; j++) {
      climbed += draw[k - j] - draw[k - half - j];
    }
    return climbed / half;
  }

  /**
   * The last instant before {@code i} at which the draw was no higher than a fan's; {@code i}
   * without one. An inverter may hold a slow speed for a while before it climbs, so that the
   * threshold is passed long after.
   */
  private int lastOfFan(int i) {
    for (int k = i - 1; k >= earliest(i) && compressor.no(k); k--) {
      if (draw[k] <= mostOfFan) {
        return k;
      }
    }
    return i;
  }

  private int earliest(int i) {
    return Math.max(wide, i - timeline.instants(LONGEST_CLIMB_S));
  }

  /**
   * The first instant on the way up to {@code i} at which the draw is off the level that it leaves,
   * looked for from {@code last} down.
   */
  private int leavesLevel(int last, int i, Wandering wandering) {
    int k = last;
    while (k >= earliest(i)
        && compressor.no(k - 1)
        && climb(k) > Math.max(wandering.beyond(draw[k]), LEAVES_SHARE * (draw[i] - draw[k]))) {
      k--;
    }
    return k + 1;
  }

  /**
   * Goes on down from {@code last} while the draw crawls up: a motor at its lowest speed, with the
   * pressures still level, draws little more than its friction, and more only as they part. A fan
   * that has come up to speed crawls no more; where the way leads down to a heater at rest, it was
   * a fan that came up just before, and {@code last} stands.
   */
  private int beginsToCrawl(int last, int i, Wandering wandering) {
    int k = last;
    while (k - 2 * half >= 0
        && k >= earliest(i)
        && compressor.no(k - 1)
        && slowClimb(k) > Math.max(wandering.beyond(draw[k]), SLOW_SHARE * (draw[i] - draw[k]))) {
      k--;
    }
    return draw[k] > LeadingFan.REST_OF_FAN * draw[last] ? k + 1 : last + 1;
  }

  /**
   * Goes down from the last instant of a fan's draw as long as it climbs there not much less
   * steeply.
   */
  private int footOf(int last) {
    int ahead = Math.min(draw.length - 1, last + wide);
    double flat = FLAT_SHARE * (draw[ahead] - draw[last]) / Math.max(1, ahead - last);
    int k = last;
    while (k >= earliest(last) && compressor.no(k - 1) && climb(k) / wide > flat) {
      k--;
    }
    return k;
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
}
