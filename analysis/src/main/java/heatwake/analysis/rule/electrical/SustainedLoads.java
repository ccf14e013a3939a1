package heatwake.analysis.rule.electrical;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;

/** Mean currents over every window of one length in which no reading is missing. */
final class SustainedLoads {
  private final double[] current;

  /** Mean over the window that begins at each instant; NaN where there is none. */
  private final double[] meanA;

  private final int window;

  private SustainedLoads(double[] current, double[] meanA, int window) {
    this.current = current;
    this.meanA = meanA;
    this.window = window;
  }

  /**
   * Over all windows of a length in which no reading is missing or under {@code leastA}.
   *
   * @param lengthS length of a window
   */
  static SustainedLoads of(Timeline timeline, double[] current, double lengthS, double leastA) {
    int window = (int) Math.max(1, Math.round(lengthS / timeline.stepS()));
    double[] meanA = Timeline.unknown(current.length);
    double sum = 0;
    int inARow = 0;
    for (int i = 0; i < current.length; i++) {
      if (Double.isNaN(current[i]) || current[i] < leastA) {
        inARow = 0;
        sum = 0;
        continue;
      }
      sum += current[i];
      inARow++;
      if (inARow > window) {
        sum -= current[i - window];
      }
      if (inARow >= window) {
        meanA[i - window + 1] = sum / window;
      }
    }
    return new SustainedLoads(current, meanA, window);
  }

  /** The highest of the means; 0 without any. */
  double highestA() {
    return Arrays.stream(meanA).filter(mean -> !Double.isNaN(mean)).max().orElse(0);
  }

  /**
   * The time covered by windows whose mean is too high, each without the instants at its ends that
   * do not lie above a level themselves.
   *
   * @param tooHigh whether a mean is
   * @param levelA level above which the current itself must lie
   * @param share for at least this share of a window
   */
  List<Stretch> whereMean(DoublePredicate tooHigh, double levelA, double share) {
    boolean[] covered = new boolean[meanA.length];
    int high = 0;
    int done = 0;
    for (int i = 0; i < meanA.length; i++) {
      high += current[i] >= levelA ? 1 : 0;
      int from = i - window + 1;
      if (from > 0) {
        high -= current[from - 1] >= levelA ? 1 : 0;
      }
      if (from >= 0 && tooHigh.test(meanA[from]) && high >= share * window) {
        Arrays.fill(covered, Math.max(done, from), i + 1, true);
        done = i + 1;
      }
    }
    return Stretch.where(covered.length, i -> covered[i]).stream()
        .map(stretch -> trimmed(stretch, levelA))
        .toList();
  }

  private Stretch trimmed(Stretch stretch, double levelA) {
    int from = stretch.from();
    int to = stretch.to();
    while (from < to - 1 && !(current[from] >= levelA)) {
      from++;
    }
    while (to > from + 1 && !(current[to - 1] >= levelA)) {
      to--;
    }
    return new Stretch(from, to);
  }
}
