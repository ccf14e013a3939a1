package heatwake.analysis.zero;

/** The step between the values that a probe can show. */
final class Resolution {
  /** Values this far apart or less are one value, rounded differently. */
  private static final double SAME = 1e-9;

  /** A probe whose neighbours are equal less often than this blurs its own steps; ours. */
  private static final double REPEATS_OF_A_STEPPED_PROBE = 0.5;

  private Resolution() {}

  /** Smallest step between unlike neighbours; zero if neighbours are seldom alike. */
  static double of(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    int alike = 0;
    int pairs = 0;
    for (int i = 1; i < values.length; i++) {
      double step = Math.abs(values[i] - values[i - 1]);
      if (!Double.isNaN(step)) {
        pairs++;
        if (step <= SAME) {
          alike++;
        } else {
          least = Math.min(least, step);
        }
      }
    }
    boolean stepped = pairs > 0 && alike > REPEATS_OF_A_STEPPED_PROBE * pairs;
    return stepped && least < Double.POSITIVE_INFINITY ? least : 0;
  }
}
