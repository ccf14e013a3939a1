package heatwake.analysis.phase;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A run of the compressor too short for its effects to show. It holds the draw of a motor that
 * turns; one that does not draws several times that, or hums low, and trips within some ten seconds
 * (common practice).
 */
final class ShortRun {
  /**
   * A motor that does not turn has tripped by then (common practice: within some ten seconds; half
   * as long again, since its draw tells too).
   */
  private static final double LEAST_S = 15;

  /** And so many readings show that the level is held (ours). */
  private static final int READINGS = 3;

  /** Shares of the nameplate's draw between which a compressor runs; less is a fan (ours). */
  private static final double LEAST_OF_PLATE = 0.5;

  /** More is a motor that does not turn: three times and more (common practice; limit ours). */
  private static final double MOST_OF_PLATE = 1.2;

  /** It keeps its level within this share, as the pressures part (ours). */
  private static final double FLAT = 0.15;

  private ShortRun() {}

  /**
   * Whether a draw is one.
   *
   * @param from first instant of the draw
   * @param to first instant after it
   * @param plate greatest draw by the nameplate; nothing is told without it
   * @param stepS time between instants, s
   * @param intervalS usual time between readings, s
   */
  static boolean isIn(
      double[] draw, int from, int to, OptionalDouble plate, double stepS, double intervalS) {
    double leastS = Math.max(LEAST_S, READINGS * intervalS);
    if (plate.isEmpty() || (to - from) * stepS < leastS) {
      return false;
    }
    double[] sorted = Arrays.copyOfRange(draw, from, to);
    Arrays.sort(sorted);
    double middle = sorted[sorted.length / 2];
    return middle >= LEAST_OF_PLATE * plate.getAsDouble()
        && middle <= MOST_OF_PLATE * plate.getAsDouble()
        && longestFlat(draw, from, to, middle) * stepS >= leastS;
  }

  private static int longestFlat(double[] draw, int from, int to, double level) {
    int longest = 0;
    int flat = 0;
    for (int i = from; i < to; i++) {
      flat = Math.abs(draw[i] - level) <= FLAT * level ? flat + 1 : 0;
      longest = Math.max(longest, flat);
    }
    return longest;
  }
}
