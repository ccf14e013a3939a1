package heatwake.dashboard.chart;

import heatwake.dashboard.present.Figure;

/**
 * A vertical axis with round ends. Values that wander a little leave it where it is: it moves only
 * when they cross a round number, so a live chart does not jitter.
 *
 * @param low lower end, a multiple of the step
 * @param high upper end, a multiple of the step
 * @param step distance between marks: 1, 2 or 5 times a power of ten
 */
public record ValueAxis(double low, double high, double step) {
  /** Marks a strip of ordinary height has room for. */
  private static final int USUAL_STEPS = 5;

  /** Part of a step by which a value may stick out before the axis moves for it. */
  private static final double OVERSHOOT = 0.03;

  /** Part of a step below zero that is taken for noise of something that rests. */
  private static final double NOISE_ABOUT_ZERO = 0.2;

  /**
   * The axis that holds values from {@code least} to {@code greatest}.
   *
   * @param shortest the shortest stretch worth showing, so that noise is not blown up
   */
  public static ValueAxis holding(double least, double greatest, double shortest) {
    if (!(least <= greatest)) {
      return holding(0, shortest, shortest);
    }
    double middle = (least + greatest) / 2;
    double half = Math.max(greatest - least, shortest) / 2;
    double from = Math.min(least, middle - half);
    double to = Math.max(greatest, middle + half);
    // Magnitudes that start at nothing read best from zero.
    if (least >= 0 && from < 0) {
      to -= from;
      from = 0;
    }
    double step = roundStep((to - from) / USUAL_STEPS);
    boolean noiseAboutZero = from < 0 && from > -NOISE_ABOUT_ZERO * step;
    double low = noiseAboutZero ? 0 : Math.floor(from / step + OVERSHOOT) * step;
    double high = Math.ceil(to / step - OVERSHOOT) * step;
    return new ValueAxis(low, high > low ? high : low + step, step);
  }

  /** The axis from zero to one hundred per cent. */
  public static ValueAxis percent() {
    return new ValueAxis(0, 100, 25);
  }

  /** The nearest step of 1, 2 or 5 times a power of ten that is not shorter. */
  static double roundStep(double atLeast) {
    double power = Math.pow(10, Math.floor(Math.log10(atLeast) + 1e-9));
    double share = atLeast / power;
    double factor = share <= 1 + 1e-9 ? 1 : share <= 2 + 1e-9 ? 2 : share <= 5 + 1e-9 ? 5 : 10;
    return factor * power;
  }

  /** Whether a value lies between its ends. */
  boolean holds(double value) {
    return value >= low && value <= high;
  }

  /** Number of steps from end to end. */
  public int steps() {
    return (int) Math.round((high - low) / step);
  }

  /** Value of mark {@code i}, 0 to {@link #steps()}. */
  public double mark(int i) {
    return low + i * step;
  }

  /**
   * The first mark written when every so many marks are written: a multiple of what lies between
   * those, so that what is written is round.
   */
  int firstWritten(int every) {
    return (int) Math.floorMod(-Math.round(low / step), (long) every);
  }

  /**
   * What is written at mark {@code i} when every so many marks are written: as many decimals as
   * tell those apart.
   */
  public String label(int i, int every) {
    double written = every * step;
    int decimals = 0;
    while (decimals < 6 && Math.abs(written - Math.rint(written)) > 1e-6 * written) {
      written *= 10;
      decimals++;
    }
    return Figure.fixed(mark(i), decimals);
  }
}
