package heatwake.analysis.phase;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;

/**
 * Defrosts that show through a pair of probes whose uncertainty hides the rise itself. What the two
 * keep wrong alike falls out of how far their difference goes down for some minutes, while the draw
 * steps down and goes on, and up again with the draw: neither a pump nor a fan on the meter makes
 * water leave colder than just before and then as warm as before.
 */
final class FaintDefrosts {
  /** The difference falls by so much: by more than coarse digits of two probes, K (ours). */
  private static final double FALLS_K = 1;

  /** For so long (a defrost: 1 to 12 min). */
  private static final double LEAST_S = 60;

  private static final double MOST_S = 1200;

  /** It is held against so long before and after, but for the minutes in which it moves (ours). */
  private static final double AROUND_S = 600;

  private static final double MOVES_S = 150;

  /** Of its fall, what is back after it; and what the entering water may move (ours). */
  private static final double BACK_SHARE = 0.7;

  private static final double ENTERING_SHARE = 0.5;

  /** The draw meanwhile, as shares of that around it; see {@link DefrostByDraw}. */
  private static final double DRAWS_LEAST = 0.3;

  private static final double DRAWS_MOST = 0.92;

  /** One may be a clip that was touched; ours. */
  private static final int FEWEST = 2;

  private final Timeline timeline;
  private final double[] riseK;
  private final double[] draw;
  private final double[] in;
  private final double[] air;

  private FaintDefrosts(Timeline timeline, double[] riseK, double[] draw) {
    this.timeline = timeline;
    this.riseK = riseK;
    this.draw = draw;
    this.in = timeline.of(Channel.WATER_IN);
    this.air = timeline.of(timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT));
  }

  /**
   * Whether there are some.
   *
   * @param riseK difference of the pair, NaN where it says nothing
   */
  static boolean areSeen(Timeline timeline, double[] riseK) {
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    return timeline.has(channel)
        && new FaintDefrosts(timeline, riseK, timeline.of(channel)).count() >= FEWEST;
  }

  private int count() {
    int around = timeline.instants(AROUND_S);
    int found = 0;
    for (int i = around; i < riseK.length - around; i++) {
      int end = end(i);
      if (end > i && isDefrost(i, end)) {
        found++;
        i = end + around;
      }
    }
    return found;
  }

  /** One after the last instant of the draw's step down that begins at an instant; else that. */
  private int end(int from) {
    double before = Stretch.mean(draw, from - timeline.instants(AROUND_S), from);
    if (!isStep(draw[from] / before) || isStep(draw[from - 1] / before)) {
      return from;
    }
    int end = from;
    while (end < draw.length && isStep(draw[end] / before)) {
      end++;
    }
    return end;
  }

  private static boolean isStep(double share) {
    return share >= DRAWS_LEAST && share <= DRAWS_MOST;
  }

  private boolean isDefrost(int from, int to) {
    int around = timeline.instants(AROUND_S);
    int back = to + timeline.instants(MOVES_S);
    int least = timeline.instants(LEAST_S);
    if (to - from < least
        || to - from > timeline.instants(MOST_S)
        || Stretch.mean(air, from, to) > IcingAir.NO_COIL_ABOVE_K
        || !isHeard(from - around, back)) {
      return false;
    }
    double beforeK = Stretch.mean(riseK, from - around, from);
    double afterK = Stretch.mean(riseK, back, Math.min(riseK.length, back + around));
    double fellK = beforeK - coldest(from, back, least);
    double enteredK = Stretch.mean(in, from, back) - Stretch.mean(in, from - around, from);
    return fellK > FALLS_K
        && afterK > beforeK - (1 - BACK_SHARE) * fellK
        && Math.abs(enteredK) < ENTERING_SHARE * fellK;
  }

  /** Whether moving water is heard at all instants between two. */
  private boolean isHeard(int from, int to) {
    return from >= 0
        && to <= riseK.length
        && Arrays.stream(riseK, from, to).noneMatch(Double::isNaN);
  }

  /** The least mean over so many instants. */
  private double coldest(int from, int to, int instants) {
    double coldest = Double.POSITIVE_INFINITY;
    for (int i = from; i + instants <= to; i++) {
      coldest = Math.min(coldest, Stretch.mean(riseK, i, i + instants));
    }
    return coldest;
  }
}
