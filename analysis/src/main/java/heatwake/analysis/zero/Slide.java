package heatwake.analysis.zero;

import heatwake.analysis.timeline.Stretch;

/**
 * What unlike clips make of water that still changes. After the pump starts, the pipes come from
 * where they stood to the pool's temperature; two clips that follow with lags some ten seconds
 * apart then differ by the rate times that, with no offset in either. A pool alone changes by less
 * than 1 K/h, which makes nothing of it.
 */
final class Slide {
  /** Lags of two clips, and the transit between them, differ by up to this, s; ours. */
  private static final double APART_S = 60;

  private Slide() {}

  /**
   * Standard uncertainty of a mean difference by it, K: the quicker of both pipes, rectangular.
   *
   * @param from first instant of the stretch
   * @param to one after its last
   */
  static double standardK(double[] inK, double[] hotK, int from, int to, double stepS) {
    int half = (to - from) / 2;
    double apartS = half * stepS;
    if (!(apartS > 0)) {
      return 0;
    }
    double moves = Math.max(moves(inK, from, to, half), moves(hotK, from, to, half));
    return APART_S * moves / apartS / Math.sqrt(3);
  }

  private static double moves(double[] values, int from, int to, int half) {
    return Math.abs(Stretch.mean(values, to - half, to) - Stretch.mean(values, from, from + half));
  }
}
