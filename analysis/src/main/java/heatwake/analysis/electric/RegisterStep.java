package heatwake.analysis.electric;

import heatwake.analysis.series.Series;

/**
 * The step by which the register of a kWh meter moves: the greatest of 1, 0.1, 0.01, ... kWh of
 * which all readings are multiples, times what all their differences have in common. Where none
 * fits (pulses, binary fractions) the smallest difference seen.
 */
final class RegisterStep {
  private static final double J_PER_KWH = 3.6e6;

  /** Meters show no more decimals of a kWh than these; common practice. */
  private static final int MOST_DECIMALS = 4;

  /** A reading this close to a multiple, in steps, is one: room for what conversion rounds. */
  private static final double ROUNDED = 0.01;

  private RegisterStep() {}

  /** The step in J; zero for a register that never moves. */
  static double of(Series series) {
    for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
      double stepJ = J_PER_KWH / Math.pow(10, decimals);
      if (areMultiples(series, stepJ)) {
        return stepJ * commonOf(series, stepJ);
      }
    }
    double least = Double.POSITIVE_INFINITY;
    for (int r = 1; r < series.size(); r++) {
      double step = series.value(r) - series.value(r - 1);
      least = step > 0 ? Math.min(least, step) : least;
    }
    return least < Double.POSITIVE_INFINITY ? least : 0;
  }

  private static boolean areMultiples(Series series, double stepJ) {
    for (int r = 0; r < series.size(); r++) {
      double steps = series.value(r) / stepJ;
      if (Math.abs(steps - Math.rint(steps)) > ROUNDED) {
        return false;
      }
    }
    return true;
  }

  /** Greatest common divisor of all differences, in steps. */
  private static long commonOf(Series series, double stepJ) {
    long common = 0;
    for (int r = 1; r < series.size() && common != 1; r++) {
      long steps = Math.abs(Math.round((series.value(r) - series.value(r - 1)) / stepJ));
      while (steps != 0) {
        long rest = common % steps;
        common = steps;
        steps = rest;
      }
    }
    return common;
  }
}
