package heatwake.analysis.phase;

/**
 * What lift and power of a running compressor lately were, outside defrosts; NaN where not known.
 */
final class UsualDuty {
  /** So long it remembers (ours). */
  private static final double MEMORY_S = 300;

  private final double memory;
  private double lift = Double.NaN;
  private double power = Double.NaN;

  /**
   * Knows nothing yet.
   *
   * @param stepS time between instants, s
   */
  UsualDuty(double stepS) {
    this.memory = Math.min(1, stepS / MEMORY_S);
  }

  /** Takes in an instant; NaN for what is not known then. */
  void learn(double liftNow, double powerNow) {
    lift = mix(lift, liftNow);
    power = mix(power, powerNow);
  }

  /** Pressure lift, Pa. */
  double lift() {
    return lift;
  }

  /** Power, W. */
  double power() {
    return power;
  }

  private double mix(double before, double now) {
    if (Double.isNaN(now)) {
      return before;
    }
    return Double.isNaN(before) ? now : before + memory * (now - before);
  }
}
