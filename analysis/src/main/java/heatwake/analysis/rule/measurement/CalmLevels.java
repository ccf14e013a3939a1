package heatwake.analysis.rule.measurement;

/**
 * The levels that a jittering reading holds for a while. One that only tips to and fro between two
 * digits may come to rest within one of them; one that was seen at levels two digits apart, and
 * jittered at each, has passed every place between two digits.
 */
final class CalmLevels {
  /** The two halves of a calm time differ by no more than this many digits; ours. */
  private static final double CALM_DIGITS = 1;

  private final int window;
  private final double digit;
  private final double[] held;
  private int count;
  private int calm;
  private double lowest = Double.POSITIVE_INFINITY;
  private double highest = Double.NEGATIVE_INFINITY;

  /**
   * @param window so many readings in a row make a time
   * @param digit smallest step of the reading
   */
  CalmLevels(int window, double digit) {
    this.window = window;
    this.digit = digit;
    this.held = new double[window];
  }

  /** Takes the next reading of those in a row. */
  void take(double value) {
    held[count++] = value;
    if (count < window) {
      return;
    }
    count = 0;
    double early = mean(0, window / 2);
    double late = mean(window / 2, window);
    if (Math.abs(late - early) <= CALM_DIGITS * digit) {
      calm++;
      lowest = Math.min(lowest, (early + late) / 2);
      highest = Math.max(highest, (early + late) / 2);
    }
  }

  /** The next reading is none in a row with the last. */
  void breakOff() {
    count = 0;
  }

  /** How many digits the levels are apart, if there are so many of them; else 0. */
  double rangeInDigits(int atLeast) {
    return calm < atLeast ? 0 : (highest - lowest) / digit;
  }

  private double mean(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += held[i];
    }
    return sum / (to - from);
  }
}
