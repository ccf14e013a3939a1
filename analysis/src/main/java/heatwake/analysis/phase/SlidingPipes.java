package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import java.util.function.IntPredicate;

/**
 * Times at which the water in the heater's pipes stands, told by the two pipes alone: with the
 * compressor at rest both glide together, faster than a pool does. From then on the water stands
 * until the compressor runs, or fresh water comes at once. What the entering water's probe reads
 * meanwhile is no temperature of the pool.
 */
public final class SlidingPipes {
  /** A glide is looked at over so long, s; ours. */
  private static final double GLIDE_S = 1200;

  /** In parts that all have to glide, so that fresh water, which comes at once, is none; ours. */
  private static final int PARTS = 3;

  private static final double LEAST_OF_A_PART = 0.15;

  /**
   * A pool loses or gains some tenths of a kelvin an hour (common practice: 1 kW/m2 on 1.5 m of
   * water is 0.6 K/h); three times that, in a glide's time, K.
   */
  private static final double LEAST_GLIDE_K = 0.6;

  /** Means over so long are compared, s; ours. */
  private static final double MEAN_S = 120;

  /** Fresh water brings so much, K, within the time of a mean; ours. */
  private static final double FRESH_K = 1;

  private final MovingMean in;
  private final MovingMean out;
  private final int mean;
  private final int part;
  private final int size;
  private final IntPredicate runs;

  private SlidingPipes(Timeline timeline, IntPredicate runs) {
    this.in = new MovingMean(timeline.of(Channel.WATER_IN));
    this.out = new MovingMean(timeline.of(Channel.WATER_OUT));
    this.mean = timeline.instants(MEAN_S);
    this.part = Math.max(1, timeline.instants(GLIDE_S) / PARTS);
    this.size = timeline.size();
    this.runs = runs;
  }

  /**
   * Where it stands; says nothing elsewhere.
   *
   * @param runs whether the compressor runs at an instant
   */
  public static Track standing(Timeline timeline, IntPredicate runs) {
    Track standing = new Track(timeline.size());
    if (timeline.has(Channel.WATER_IN) && timeline.has(Channel.WATER_OUT)) {
      new SlidingPipes(timeline, runs).markIn(standing);
    }
    return standing;
  }

  private void markIn(Track standing) {
    int restsSince = 0;
    for (int i = 0; i < size; i++) {
      if (runs.test(i)) {
        restsSince = i + 1;
        continue;
      }
      int from = i - PARTS * part;
      if (from >= restsSince && glides(in, from) && glides(out, from) && together(from, i)) {
        standing.fill(from, i + 1, Track.YES);
      } else if (i > 0 && standing.yes(i - 1) && !bringsFreshWater(i)) {
        standing.set(i, Track.YES);
      }
    }
  }

  private boolean together(int from, int to) {
    return (at(in, to) - at(in, from)) * (at(out, to) - at(out, from)) > 0;
  }

  private boolean glides(MovingMean pipe, int from) {
    double all = at(pipe, from + PARTS * part) - at(pipe, from);
    if (!(Math.abs(all) >= LEAST_GLIDE_K)) {
      return false;
    }
    for (int k = 0; k < PARTS; k++) {
      double share = (at(pipe, from + (k + 1) * part) - at(pipe, from + k * part)) / all;
      if (!(share >= LEAST_OF_A_PART)) {
        return false;
      }
    }
    return true;
  }

  private boolean bringsFreshWater(int i) {
    return Math.abs(at(in, i) - at(in, i - mean)) >= FRESH_K
        || Math.abs(at(out, i) - at(out, i - mean)) >= FRESH_K;
  }

  /** Around an instant. */
  private double at(MovingMean pipe, int i) {
    return pipe.mean(Math.max(0, i - mean / 2), Math.min(size, i + mean / 2 + 1));
  }
}
