package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.FrozenFlow;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.List;

/** A time in which a series repeats one value to the last digit. */
record Frozen(Series series, int from, int to) {
  /** A reading that never changed may be as coarse as this, K; ours: whole degrees Fahrenheit. */
  private static final double COARSEST_DIGIT_K = 0.56;

  /** All of them, in order of time. */
  static List<Frozen> all(Series series) {
    List<Frozen> found = new ArrayList<>();
    for (int from = 0; from < series.size(); ) {
      int to = from + 1;
      while (to < series.size() && series.value(to) == series.value(from)) {
        to++;
      }
      Frozen frozen = new Frozen(series, from, to);
      if (frozen.readings() >= FrozenFlow.LEAST_READINGS
          && frozen.lengthS() >= FrozenFlow.LEAST_S) {
        found.add(frozen);
      }
      from = to;
    }
    return found;
  }

  /**
   * Whether the value is one at which a sound reading may rest, or an impossible one that is
   * another rule's business: saturated or dry air, nothing flowing.
   */
  boolean isAtALimit() {
    double stored = series.channel().storedUnit().fromSi(value());
    boolean isFullOrEmpty =
        series.channel().quantity() == Quantity.RATIO && (stored >= 99 || stored <= 1);
    return isFullOrEmpty || value() == 0 || !series.channel().isPossible(stored);
  }

  /** The smallest step of a temperature's series; one that never changed may be coarse. */
  double digitK() {
    double smallest = series.smallestStep();
    return Double.isInfinite(smallest) ? COARSEST_DIGIT_K : smallest;
  }

  /** Whether none of its series among some lasts longer. */
  boolean isLongestAmong(List<Frozen> others) {
    return others.stream()
        .noneMatch(other -> other.series == series && other.lengthS() > lengthS());
  }

  /** Whether the series never said anything else. */
  boolean isWholeRun() {
    return readings() == series.size();
  }

  double value() {
    return series.value(from);
  }

  int readings() {
    return to - from;
  }

  long fromMs() {
    return series.timeMs(from);
  }

  long toMs() {
    return series.timeMs(to - 1);
  }

  double lengthS() {
    return (toMs() - fromMs()) / 1e3;
  }
}
