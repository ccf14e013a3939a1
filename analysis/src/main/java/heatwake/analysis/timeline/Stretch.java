package heatwake.analysis.timeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.descriptive.NaNPolicy;

/**
 * Instants of a timeline in a row.
 *
 * @param from first instant
 * @param to one after the last
 */
public record Stretch(int from, int to) {

  /** The longest stretches of instants, 0 to {@code size}, for which something holds. */
  public static List<Stretch> where(int size, IntPredicate holds) {
    List<Stretch> found = new ArrayList<>();
    int from = -1;
    for (int i = 0; i <= size; i++) {
      boolean now = i < size && holds.test(i);
      if (now && from < 0) {
        from = i;
      } else if (!now && from >= 0) {
        found.add(new Stretch(from, i));
        from = -1;
      }
    }
    return found;
  }

  /**
   * The same, where a short time without it parts nothing: stretches no further apart than {@code
   * bridge} instants are one, unless something between them speaks against it.
   */
  public static List<Stretch> bridged(
      int size, IntPredicate holds, int bridge, IntPredicate parts) {
    List<Stretch> found = new ArrayList<>();
    for (Stretch next : where(size, holds)) {
      int last = found.size() - 1;
      if (last >= 0
          && next.from - found.get(last).to <= bridge
          && IntStream.range(found.get(last).to, next.from).noneMatch(parts)) {
        found.set(last, new Stretch(found.get(last).from, next.to));
      } else {
        found.add(next);
      }
    }
    return found;
  }

  /** Number of instants. */
  public int length() {
    return to - from;
  }

  /** From its first instant to its last and one step more, s. */
  public double durationS(Timeline timeline) {
    return length() * timeline.stepS();
  }

  /** Median of the values over it, those that are not known left out; NaN where none is. */
  public double middle(double[] values) {
    return Median.withDefaults()
        .with(NaNPolicy.EXCLUDE)
        .evaluate(Arrays.copyOfRange(values, from, to));
  }

  /** Mean of the values over it, NaN where there are none. */
  public double mean(double[] values) {
    return mean(values, from, to);
  }

  /** Mean of the values at those of its instants for which something holds; NaN without any. */
  public double mean(double[] values, IntPredicate holds) {
    double sum = 0;
    int count = 0;
    for (int i = Math.max(0, from); i < Math.min(values.length, to); i++) {
      if (!Double.isNaN(values[i]) && holds.test(i)) {
        sum += values[i];
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }

  /** The same over all of a timeline. */
  public static double meanWhere(double[] values, IntPredicate holds) {
    return new Stretch(0, values.length).mean(values, holds);
  }

  /** Mean of the values from one instant up to another, as far as they lie on the grid. */
  public static double mean(double[] values, int from, int to) {
    return new Stretch(from, to).mean(values, known -> true);
  }
}
