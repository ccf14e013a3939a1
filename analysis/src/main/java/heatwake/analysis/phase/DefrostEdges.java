package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import java.util.function.IntPredicate;

/** Begin and end of a defrost that shows, by the quickest signal that tells of them. */
final class DefrostEdges {
  /** Signals leave their level by more than this share (ours, above noise). */
  private static final double LEFT_LEVEL = 0.08;

  private final double[] lift;
  private final double[] rise;
  private final double fullRiseK;
  private final double[] power;

  /**
   * By the signals of a run, null for one that is not known.
   *
   * @param lift pressure lift, Pa
   * @param rise rise of the water, K
   * @param fullRiseK the rise of the running heater, K
   * @param power W
   */
  DefrostEdges(double[] lift, double[] rise, double fullRiseK, double[] power) {
    this.lift = lift;
    this.rise = rise;
    this.fullRiseK = fullRiseK;
    this.power = power;
  }

  /**
   * The moment at which power or lift left its level, else the rise.
   *
   * @param seen first instant at which the defrost shows
   * @param earliest first instant at which it may have begun
   */
  int begin(int seen, int earliest, UsualDuty usual) {
    int start = seen;
    if (rise != null) {
      start = lastWhere(earliest, seen, i -> rise[i] >= (1 - 2 * LEFT_LEVEL) * fullRiseK);
    }
    if (lift != null && lift[seen] < (1 - LEFT_LEVEL) * usual.lift()) {
      start = lastWhere(earliest, seen, i -> lift[i] >= (1 - LEFT_LEVEL) * usual.lift());
    }
    if (power != null && Math.abs(power[seen] / usual.power() - 1) > Defrost.POWER_CHANGED) {
      int left =
          lastWhere(
              earliest,
              seen,
              i -> Math.abs(power[i] - usual.power()) <= LEFT_LEVEL * usual.power());
      start = Math.min(start, left);
    }
    return start;
  }

  /**
   * The moment at which the first of power and lift, or else the rise, began to come back.
   *
   * @param seen first instant at which the defrost shows
   * @param back first instant at which it no longer does
   */
  int finish(int seen, int back, UsualDuty usual) {
    int end = back;
    if (power != null) {
      double middle = Stretch.mean(power, seen, (seen + back + 1) / 2);
      if (Math.abs(middle / usual.power() - 1) > Defrost.POWER_CHANGED) {
        double halfWay = (middle + usual.power()) / 2;
        boolean below = middle < usual.power();
        end = lastWhere(seen, back, i -> below ? power[i] < halfWay : power[i] > halfWay);
      }
    }
    if (lift != null) {
      end = Math.min(end, leavesLowest(lift, usual.lift(), seen, back));
    }
    return power == null && lift == null ? leavesLowest(rise, fullRiseK, seen, back) : end;
  }

  private static int leavesLowest(double[] signal, double level, int seen, int back) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = seen; i < back; i++) {
      if (signal[i] < lowest) {
        lowest = signal[i];
      }
    }
    double leaves = lowest + LEFT_LEVEL * (level - lowest);
    return lastWhere(seen, back, i -> signal[i] <= leaves);
  }

  /** One after the last instant between two for which something holds; the later one if none. */
  private static int lastWhere(int from, int to, IntPredicate holds) {
    for (int i = to - 1; i >= from; i--) {
      if (holds.test(i)) {
        return i + 1;
      }
    }
    return to;
  }
}
