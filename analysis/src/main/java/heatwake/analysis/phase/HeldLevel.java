package heatwake.analysis.phase;

/** A level at which a draw stays for a while, not one that it passes. */
final class HeldLevel {
  private HeldLevel() {}

  /** The lowest draw that was not passed for so many instants on end; infinite without one. */
  static double lowest(double[] draw, int held) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int from = 0; from + held <= draw.length; from++) {
      double highest = 0;
      int i = from;
      while (i < from + held && draw[i] < lowest) {
        highest = Math.max(highest, draw[i]);
        i++;
      }
      if (i == from + held) {
        lowest = highest;
      } else {
        from = i;
      }
    }
    return lowest;
  }
}
