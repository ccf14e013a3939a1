package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;

/**
 * Moves starts and stops that a temperature rise tells from where it passes a level to where it
 * began to move. Water in the exchanger, metal and clips make the rise follow like a first-order
 * lag, whose way through two levels leads back to its beginning: 1 - exp(-t/T) is 0.2 at 0.223 T
 * and 0.5 at 0.693 T, so it began 0.475 of the time between the two before the first.
 */
final class RiseFeet {
  /** Shares of the rise, from the end that is left. */
  private static final double LEFT = 0.2;

  private static final double HALF_WAY = 0.5;

  private static final double BACK = 0.223 / (0.693 - 0.223);

  /**
   * The rise begins so long after the compressor (common practice: refrigerant and metal first,
   * then the water's way to the clip, half a minute or a little more), and falls so long after its
   * stop.
   */
  static final double BEGINS_LATER_S = 35;

  private static final double FALLS_LATER_S = 10;

  /** The way back to the beginning is no longer (common practice: a rise is full in minutes). */
  private static final double LONGEST_S = 300;

  /** A lag takes no longer from a fifth to half of its way (ours: one of four minutes). */
  private static final double LONGEST_LAG_S = 120;

  /** What a rise was before it fell is taken over so long (ours). */
  private static final double BEFORE_S = 60;

  private final double[] rise;
  private final Track heats;
  private final double full;
  private final double stepS;

  private RiseFeet(double[] rise, Track heats, double full, long stepMs) {
    this.rise = rise;
    this.heats = heats;
    this.full = full;
    this.stepS = stepMs / 1e3;
  }

  static void move(double[] rise, Track heats, double full, long stepMs) {
    new RiseFeet(rise, heats, full, stepMs).move();
  }

  private void move() {
    int edge = 0;
    for (int i = 1; i < heats.size(); i++) {
      if (!heats.yes(i) && !heats.no(i)) {
        // What began in a silence began nobody knows when.
        edge = i;
      } else if (heats.yes(i) && heats.no(i - 1)) {
        int from = began(i, edge, full);
        heats.fill(from, i, Track.YES);
        edge = i;
      } else if (heats.no(i) && heats.yes(i - 1)) {
        int from = began(i, edge, before(i));
        heats.fill(Math.max(from, edge + 1), i, Track.NO);
        edge = i;
      }
    }
  }

  /** The rise before it fell: the greatest mean over a minute within the time looked back over. */
  private double before(int i) {
    int span = instants(BEFORE_S);
    double most = 0;
    for (int end = i; end > Math.max(span, i - instants(LONGEST_S)); end -= Math.max(1, span / 4)) {
      double mean = Stretch.mean(rise, end - span, end);
      most = Double.isNaN(mean) ? most : Math.max(most, mean);
    }
    return most;
  }

  /** Where the move that has passed its level at {@code i} began, after {@code earliest}. */
  private int began(int i, int earliest, double whole) {
    boolean up = heats.yes(i);
    int first = Math.max(earliest, i - instants(LONGEST_S));
    int half = last(i, first, up ? HALF_WAY * whole : (1 - HALF_WAY) * whole, up);
    int left = last(half, first, up ? LEFT * whole : (1 - LEFT) * whole, up);
    double laterS = up ? BEGINS_LATER_S : FALLS_LATER_S;
    boolean isLag = (half - left) * stepS <= LONGEST_LAG_S;
    double back = laterS / stepS + (isLag ? (half - left) * (1 + BACK) : 0);
    return Math.max(first + 1, half - (int) Math.round(back));
  }

  /** The last instant at or before {@code i} at which the rise was still on the near side. */
  private int last(int i, int first, double level, boolean up) {
    int k = i;
    while (k > first && !Double.isNaN(rise[k - 1]) && (up ? rise[k] > level : rise[k] < level)) {
      k--;
    }
    return k;
  }

  private int instants(double seconds) {
    return (int) Math.max(1, Math.ceil(seconds / stepS));
  }
}
