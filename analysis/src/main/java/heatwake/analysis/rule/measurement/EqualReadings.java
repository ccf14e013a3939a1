package heatwake.analysis.rule.measurement;

import java.util.ArrayDeque;
import java.util.Deque;

/** How often a reading equals the one before, at the time at which it does so most often. */
final class EqualReadings {
  private final int window;
  private final Deque<Boolean> last = new ArrayDeque<>();
  private int equal;
  private int most;

  /**
   * @param window so many readings make a time
   */
  EqualReadings(int window) {
    this.window = window;
  }

  /** Takes the next reading. */
  void take(boolean equalsTheOneBefore) {
    last.addLast(equalsTheOneBefore);
    equal += equalsTheOneBefore ? 1 : 0;
    if (last.size() > window) {
      equal -= last.removeFirst() ? 1 : 0;
    }
    most = Math.max(most, equal);
  }

  /** The greatest share of equal ones over a window, 0 to 1. */
  double greatest() {
    return (double) most / window;
  }
}
