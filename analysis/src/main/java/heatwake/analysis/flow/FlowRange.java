package heatwake.analysis.flow;

/**
 * Between which flows the water through a heater lies where no meter in it says so.
 *
 * <p>The nameplate's own limits are what a sound installation keeps to. To rest on them alone would
 * rule out the very fault that is looked for, so they give way to what was seen: the water cannot
 * carry away more heat than the heater gives, and a heater that is not well may give half.
 */
record FlowRange(double lowM3PerS, double highM3PerS) {
  /** A heater that runs gives at least this part of the most it could; ours. */
  private static final double LEAST_SHARE = 0.5;

  private static final double ROOT_OF_THREE = Math.sqrt(3);

  /**
   * The range from what is allowed.
   *
   * @param leastM3PerS flow that a sound installation would not fall below
   * @param mostM3PerS flow that cannot be exceeded
   */
  static FlowRange within(double leastM3PerS, double mostM3PerS) {
    return new FlowRange(low(leastM3PerS, mostM3PerS), mostM3PerS);
  }

  /** The least flow that is left possible. */
  static double low(double leastM3PerS, double mostM3PerS) {
    return Math.min(leastM3PerS, LEAST_SHARE * mostM3PerS);
  }

  double middleM3PerS() {
    return (lowM3PerS + highM3PerS) / 2;
  }

  /** Relative standard uncertainty of the middle, rectangular (GUM 4.3.7). */
  double share() {
    return highM3PerS > 0 ? (highM3PerS - lowM3PerS) / (highM3PerS + lowM3PerS) / ROOT_OF_THREE : 0;
  }
}
