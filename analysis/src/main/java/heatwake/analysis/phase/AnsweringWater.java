package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;

/**
 * Draws that the leaving water answers one by one, in a heater that cycles too fast for a rise that
 * its pair of probes would be believed: it warms with each draw and is back before the next, while
 * the entering water stays. What the two probes keep wrong alike does not come and go, and neither
 * fan nor pump warms water. A pump that starts does bring what stood in the pipes; but that is past
 * within the first of the draw, and a heater's rise goes on to its end.
 */
final class AnsweringWater {
  /** A draw begins, and a rest ends, at these shares of the way to the highest draw (ours). */
  private static final double DRAWS = 0.4;

  private static final double RESTS = 0.2;

  /** That draw is held so long in all (ours). */
  private static final double HELD_S = 60;

  /** What the pair showed before a draw is taken over so long, and over two readings (ours). */
  private static final double BEFORE_S = 30;

  /** It shows most within this time around the end of the draw (common practice: clips lag). */
  private static final double LAGS_S = 30;

  /** Of its climb, what is gone this long after (ours; a heater's water is through in a minute). */
  private static final double BACK_SHARE = 0.5;

  private static final double BACK_S = 180;

  /**
   * Of its climb, what comes in the later half of the draw at least (ours; a lag of a minute leaves
   * a fifth for the last half of three minutes, and pipes are flushed within half a minute).
   */
  private static final double LATER_SHARE = 0.15;

  /** Of its climb, what the entering water may move (ours). */
  private static final double ENTERING_SHARE = 0.3;

  /** So many are no chance, nor a clip that was touched (ours). */
  private static final int FEWEST = 3;

  /** And of all draws that can be judged, this share (ours). */
  private static final double MOST = 0.75;

  private final Timeline timeline;
  private final double[] riseK;
  private final double[] in;
  private final int before;
  private final int lags;

  private AnsweringWater(Timeline timeline, double[] riseK) {
    this.timeline = timeline;
    this.riseK = riseK;
    this.in = timeline.of(Channel.WATER_IN);
    int slower =
        Math.max(
            timeline.intervalInstants(Channel.WATER_IN),
            timeline.intervalInstants(Channel.WATER_OUT));
    this.before = Math.max(timeline.instants(BEFORE_S), 2 * slower);
    this.lags = Math.max(timeline.instants(LAGS_S), slower);
  }

  /**
   * Whether there are some.
   *
   * @param riseK difference of the pair, NaN where it says nothing
   */
  static boolean isSeen(Timeline timeline, double[] riseK) {
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    return timeline.has(channel)
        && new AnsweringWater(timeline, riseK).answers(timeline.of(channel));
  }

  private boolean answers(double[] draw) {
    LevelHistogram levels = LevelHistogram.of(draw);
    double highest = levels.highestHeld(timeline.instants(HELD_S));
    double lowest = levels.quantile(0.02);
    double draws = lowest + DRAWS * (highest - lowest);
    double rests = lowest + RESTS * (highest - lowest);
    int judged = 0;
    int answered = 0;
    List<Stretch> drawn = Stretch.where(draw.length, i -> draw[i] > rests);
    for (int k = 0; k < drawn.size(); k++) {
      Stretch one = drawn.get(k);
      int next = k + 1 < drawn.size() ? drawn.get(k + 1).from() : draw.length;
      int back = Math.min(next, one.to() + timeline.instants(BACK_S)) - before;
      double beforeK = beforeK(riseK, one);
      double endK = endK(riseK, one);
      double climbedK = endK - beforeK;
      double leftK = Stretch.mean(riseK, back, back + before) - beforeK;
      boolean reaches = highest(draw, one) >= draws;
      // Neither is known unless moving water was heard all the while.
      if (reaches && back > one.to() && !Double.isNaN(climbedK + leftK)) {
        judged++;
        boolean entersAlike = enteredK(one) <= ENTERING_SHARE * climbedK;
        boolean comesBack = leftK <= (1 - BACK_SHARE) * climbedK;
        boolean goesOn = endK - middleK(one) >= LATER_SHARE * climbedK;
        boolean climbs = climbedK >= WaterRise.LEAST_RISE_K;
        answered += climbs && goesOn && entersAlike && comesBack ? 1 : 0;
      }
    }
    return answered >= FEWEST && answered >= MOST * judged;
  }

  private double middleK(Stretch drawn) {
    int middle = (drawn.from() + drawn.to()) / 2;
    return Stretch.mean(riseK, middle - lags, middle + lags);
  }

  private double endK(double[] kelvin, Stretch drawn) {
    return Stretch.mean(kelvin, drawn.to() - lags, drawn.to() + lags);
  }

  private static double highest(double[] draw, Stretch drawn) {
    return Arrays.stream(draw, drawn.from(), drawn.to()).max().orElse(Double.NaN);
  }

  private double enteredK(Stretch drawn) {
    return Math.abs(endK(in, drawn) - beforeK(in, drawn));
  }

  private double beforeK(double[] kelvin, Stretch drawn) {
    return Stretch.mean(kelvin, drawn.from() - before, drawn.from());
  }
}
