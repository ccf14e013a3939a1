package heatwake.analysis.rule.airflow;

import heatwake.analysis.timeline.Stretch;

/**
 * How the last hour of a stretch of running compares with its best, as both are read: what heat or
 * coil keep wrong all along drops out. Air that grew warmer takes nothing away, so that sun on its
 * probe makes no ice.
 *
 * @param heatShare heat over that at the peak
 * @param colderK how much colder the air is, K
 * @param coilColderK how much colder the coil is, K
 * @param powerShare power over that at the peak, NaN if not known
 */
record LastingIce(double heatShare, double colderK, double coilColderK, double powerShare) {
  private static final double LOOKED_AT_S = 3600;

  /**
   * Controls by the clock defrost each half to two hours, and those that watch the coil leave no
   * heat lost for long; common practice. Twice the longest is long.
   */
  static final double LONG_S = 4 * 3600;

  /** Controls that watch the coil defrost when it has fallen by 3 to 6 K; common practice. */
  private static final double FALLS_AWAY_K = 5;

  /** Sound ones defrost after losing 10 to 25 %; common practice. */
  static final double LOSS = 0.12;

  /** Power that holds: a compressor that slows down takes its heat along; ours. */
  private static final double SAME_POWER = 0.95;

  static LastingIce of(
      double[] heat,
      double[] airK,
      double[] coilK,
      double[] power,
      int[] peak,
      int end,
      double stepS) {
    int from = end - (int) Math.round(LOOKED_AT_S / stepS);
    return new LastingIce(
        later(heat, from, end) / earlier(heat, peak),
        earlier(airK, peak) - later(airK, from, end),
        earlier(coilK, peak) - later(coilK, from, end),
        later(power, from, end) / earlier(power, peak));
  }

  private static double earlier(double[] values, int[] peak) {
    return Stretch.mean(values, peak[0], peak[1]);
  }

  private static double later(double[] values, int from, int end) {
    return Stretch.mean(values, Math.max(0, from), end);
  }

  /** Whether ice has lain there for an hour that a sound control would have melted. */
  boolean shows(double lengthS) {
    double colder = Math.max(0, colderK);
    return lengthS >= LONG_S
        && powerShare > SAME_POWER
        && coilColderK - colder > FALLS_AWAY_K
        && 1 - heatShare - IcingStretch.HEAT_PER_AIR_K * colder > LOSS;
  }
}
