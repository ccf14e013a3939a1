package heatwake.analysis.zero;

/**
 * Heat that the exchanger still passes to the water, or takes from it, after water began to move
 * past it or the compressor stopped: some 5 kJ/K of metal and refrigerant up to 10 K away from the
 * water fade with a time constant of a few minutes. In 100 L/min that is some hundredths of a
 * kelvin at first, of either sign. A zero taken early rests on it, so its uncertainty allows for
 * it.
 */
final class Residue {
  /** Standard uncertainty of the difference at first, K; ours, from the heat above. */
  private static final double AT_FIRST_K = 0.04;

  /** How fast it fades, s; ours. */
  private static final double FADES_IN_S = 150;

  private Residue() {}

  /**
   * Standard uncertainty of a mean difference, K.
   *
   * @param fromS begin of the stretch, s after the heater was left to itself
   * @param toS its end
   */
  static double meanK(double fromS, double toS) {
    double first = Math.exp(-Math.max(0, fromS) / FADES_IN_S);
    if (toS <= fromS) {
      return AT_FIRST_K * first;
    }
    double last = Math.exp(-toS / FADES_IN_S);
    return AT_FIRST_K * (first - last) * FADES_IN_S / (toS - fromS);
  }
}
