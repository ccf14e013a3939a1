package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Scatter;
import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of heating whose rise drifts all along is standing water that cools or warms: two pipes
 * differ honestly then. What noise and digits of the readings leave open is no drift. Nor is a
 * heater's that ices up, which gives ever less until it defrosts: it heats on both sides of the
 * defrosts, in which the leaving water is colder than the entering.
 */
final class DriftingRise {
  /** A rise that drifts more than this share in the time below is not a heater's (ours). */
  private static final double LEVEL_SHARE = 0.05;

  private static final double DRIFT_S = 600;

  /** Means over so long are held against each other, so that noise is no drift (ours). */
  private static final double MEAN_S = 300;

  /** Two means differ by chance by no more than this (GUM: k = 2). */
  private static final double OPEN_K = 2;

  /** A defrost is over within this time (1 to 12 min, and the rise comes back: common practice). */
  private static final double DEFROST_S = 1200;

  /** Water is chilled by so much, for so long, before it counts (ours, as {@link WaterRise}). */
  private static final double CHILLED_K = 0.5;

  private static final double CHILLED_S = 60;

  private final Track heats;
  private final double[] rise;
  private final Timeline timeline;
  private final int apart;
  private final int half;
  private final double openK;
  private final MovingMean means;

  private DriftingRise(Track heats, double[] rise, Timeline timeline) {
    this.heats = heats;
    this.rise = rise;
    this.timeline = timeline;
    this.apart = timeline.instants(DRIFT_S);
    this.half = timeline.instants(MEAN_S / 2);
    int interval =
        Math.max(
            timeline.intervalInstants(Channel.WATER_IN),
            timeline.intervalInstants(Channel.WATER_OUT));
    double readings = Math.max(1, (2.0 * half + 1) / interval);
    this.openK = OPEN_K * Math.sqrt(2 / readings) * Scatter.noise(rise, interval);
    this.means = new MovingMean(rise);
  }

  /**
   * Forgets what such stretches say.
   *
   * @param heats what the rise says of the heater
   * @param rise less the difference at rest, K
   */
  static void forget(Track heats, double[] rise, Timeline timeline) {
    new DriftingRise(heats, rise, timeline).forget();
  }

  private void forget() {
    List<Stretch> heating = Stretch.where(heats.size(), heats::yes);
    List<Boolean> level = new ArrayList<>();
    heating.forEach(one -> level.add(isLevel(one.from(), one.to())));
    for (int k = 0; k < heating.size(); k++) {
      Stretch one = heating.get(k);
      boolean betweenDefrosts =
          k > 0
              && k + 1 < heating.size()
              && level.get(k - 1)
              && level.get(k + 1)
              && isDefrost(heating.get(k - 1).to(), one.from())
              && isDefrost(one.to(), heating.get(k + 1).from());
      if (!level.get(k) && !betweenDefrosts) {
        heats.fill(one.from(), one.to(), Track.UNKNOWN);
      }
    }
  }

  private boolean isLevel(int from, int to) {
    int level = 0;
    int drifting = 0;
    for (int k = from; k + apart < to; k++) {
      double before = means.mean(Math.max(from, k - half), k + half + 1);
      double after = means.mean(k + apart - half, Math.min(to, k + apart + half + 1));
      double change = Math.abs(after - before);
      if (change > Math.max(LEVEL_SHARE * Math.abs(rise[k]), openK)) {
        drifting++;
      } else {
        level++;
      }
    }
    return level > drifting;
  }

  private boolean isDefrost(int from, int to) {
    int chilled = 0;
    for (int i = from; i < to; i++) {
      chilled += rise[i] < -CHILLED_K ? 1 : 0;
    }
    return to - from <= timeline.instants(DEFROST_S) && chilled >= timeline.instants(CHILLED_S);
  }
}
