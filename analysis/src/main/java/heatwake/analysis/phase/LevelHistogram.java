package heatwake.analysis.phase;

/**
 * How often a signal stood at which level, in classes of equal ratio, so that a standby of ten
 * watts and a compressor of ten kilowatts are seen alike.
 */
final class LevelHistogram {
  private static final double LOWEST_DECADE = -6;
  private static final int DECADES = 12;
  private static final int PER_DECADE = 40;

  /** One in so many instants in a class: empty. */
  private static final int FEW = 2000;

  private static final int SOME = 400;

  /** A valley is wide from so many classes on: a ratio of 1.4. */
  private static final int WIDE_BINS = 6;

  /** A threshold's hysteresis of a tenth, in classes. */
  private static final int HYSTERESIS_BINS = 2;

  private final int[] counts = new int[DECADES * PER_DECADE];
  private int total;

  private LevelHistogram() {}

  static LevelHistogram of(double[] values) {
    LevelHistogram histogram = new LevelHistogram();
    for (double value : values) {
      histogram.add(value);
    }
    return histogram;
  }

  /** Counts only the instants at which {@code where} says {@code answer}. */
  static LevelHistogram of(double[] values, Track where, byte answer) {
    LevelHistogram histogram = new LevelHistogram();
    for (int i = 0; i < values.length; i++) {
      if (where.at(i) == answer) {
        histogram.add(values[i]);
      }
    }
    return histogram;
  }

  private void add(double value) {
    if (!Double.isNaN(value)) {
      counts[bin(value)]++;
      total++;
    }
  }

  private static int bin(double value) {
    if (value <= 0) {
      return 0;
    }
    int bin = (int) ((Math.log10(value) - LOWEST_DECADE) * PER_DECADE);
    return Math.max(0, Math.min(DECADES * PER_DECADE - 1, bin));
  }

  private static double level(double bin) {
    return Math.pow(10, LOWEST_DECADE + bin / PER_DECADE);
  }

  int total() {
    return total;
  }

  /** The highest level that was reached or passed at {@code count} instants; NaN without values. */
  double highestHeld(int count) {
    int seen = 0;
    for (int bin = counts.length - 1; bin >= 0; bin--) {
      seen += counts[bin];
      if (seen > 0 && seen >= Math.min(count, total)) {
        return level(bin + 0.5);
      }
    }
    return Double.NaN;
  }

  /** The middle level of all that reach at least {@code least}; NaN if none does. */
  double medianFrom(double least) {
    int above = 0;
    for (int bin = bin(least); bin < counts.length; bin++) {
      above += counts[bin];
    }
    return above == 0 ? Double.NaN : highestHeld((above + 1) / 2);
  }

  /** The level that a share of the instants stays under; NaN without values. */
  double quantile(double share) {
    return total == 0
        ? Double.NaN
        : highestHeld((int) Math.max(1, Math.round((1 - share) * total)));
  }

  /**
   * The middle of the emptiest stretch of levels between two: the natural place for a threshold.
   * Where many passages fill every level a little, a little counts as empty; where nothing is empty
   * the least filled level near the middle is taken.
   */
  double valley(double low, double high) {
    int first = bin(low);
    int last = bin(high);
    int[] best = longestEmpty(first, last, Math.max(1, total / FEW));
    if (best[1] < WIDE_BINS) {
      int[] shallow = longestEmpty(first, last, Math.max(1, total / SOME));
      best = shallow[1] >= WIDE_BINS ? shallow : best;
    }
    int quarter = (last - first) / 4;
    return best[1] < WIDE_BINS
        ? level(leastFilled(first + quarter, last - quarter) + 0.5)
        : level(best[0] + best[1] / 2.0);
  }

  /** Counts neighbours too: a threshold has a hysteresis, and no level may stand within it. */
  private int leastFilled(int first, int last) {
    int least = first;
    for (int bin = first; bin <= last; bin++) {
      if (around(bin) < around(least)) {
        least = bin;
      }
    }
    return least;
  }

  private int around(int bin) {
    int sum = 0;
    for (int i = bin - HYSTERESIS_BINS; i <= bin + HYSTERESIS_BINS; i++) {
      sum += counts[Math.max(0, Math.min(counts.length - 1, i))];
    }
    return sum;
  }

  /** Start and length of the longest stretch of bins with few instants in each. */
  private int[] longestEmpty(int first, int last, int few) {
    int bestStart = first;
    int bestLength = 0;
    for (int bin = first; bin <= last; ) {
      int end = bin;
      while (end <= last && counts[end] <= few) {
        end++;
      }
      if (end - bin > bestLength) {
        bestStart = bin;
        bestLength = end - bin;
      }
      bin = end + 1;
    }
    return new int[] {bestStart, bestLength};
  }
}
