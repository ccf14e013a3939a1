package heatwake.analysis.phase;

/**
 * What the high side alone says of the compressor. Its standing pressure follows the weather over
 * hours, by more than a compressor adds; so only quick changes tell: a start lifts it within
 * minutes, a stop lets it fall.
 */
final class HighSideSteps {
  /** A start's rise, and a stop's fall, as a share of the run's span of pressure (ours). */
  private static final double STEP_SHARE = 0.2;

  /** And at least this much (ours; common practice: a start lifts it by about 500 kPa). */
  private static final double LEAST_STEP_PA = 120e3;

  /** Within these times (common practice: some minutes, an inverter five). */
  private static final double[] WITHIN_S = {30, 90, 180, 300};

  /** A rise begins where so much of it has been done (ours). */
  private static final double FOOT_SHARE = 0.1;

  private HighSideSteps() {}

  /**
   * @param lift high side above its lowest level, Pa
   * @param full highest level held, Pa
   */
  static Track compressor(double[] lift, double full, long stepMs) {
    double step = Math.max(LEAST_STEP_PA, STEP_SHARE * full);
    HeldLift held = new HeldLift(stepMs);
    Track on = new Track(lift.length);
    byte state = Track.UNKNOWN;
    double standing = 0;
    for (int i = 0; i < lift.length; i++) {
      double now = lift[i];
      if (Double.isNaN(now)) {
        continue;
      }
      int rose = state == Track.YES ? -1 : since(lift, i, stepMs, step);
      int fell = state == Track.UNKNOWN && rose < 0 ? since(lift, i, stepMs, -step) : -1;
      if (state == Track.YES) {
        state = held.holds(now - standing) ? Track.YES : Track.NO;
      } else if (rose >= 0) {
        int foot = foot(lift, rose, i);
        on.fill(state == Track.UNKNOWN ? 0 : foot, foot, Track.NO);
        on.fill(foot, i, Track.YES);
        state = Track.YES;
        standing = lift[foot];
        held.begin(now - standing);
      } else if (fell >= 0) {
        on.fill(0, fell, Track.YES);
        on.fill(fell, i, Track.NO);
        state = Track.NO;
      }
      on.set(i, state);
    }
    return on;
  }

  /** The latest looked-at instant since which the lift has changed by {@code step}; -1 if none. */
  private static int since(double[] lift, int i, long stepMs, double step) {
    for (double within : WITHIN_S) {
      int before = i - (int) Math.max(1, Math.round(within * 1000 / stepMs));
      if (before >= 0) {
        double change = lift[i] - lift[before];
        if (step > 0 ? change >= step : change <= step) {
          return before;
        }
      }
    }
    return -1;
  }

  /** Where between two instants the rise begins. */
  private static int foot(double[] lift, int from, int to) {
    double low = lift[from] + FOOT_SHARE * (lift[to] - lift[from]);
    int foot = to;
    while (foot > from && !(lift[foot - 1] <= low)) {
      foot--;
    }
    return Math.max(from, foot - 1);
  }
}
