package heatwake.analysis.rule.measurement;

import heatwake.analysis.timeline.Timeline;
import java.util.function.IntPredicate;

/** Running that has gone on for so long that water and pipes have settled. */
final class SettledRunning {
  /** Water and pipes have settled this long after a start, s; common practice. */
  private static final double SETTLES_S = 300;

  private SettledRunning() {}

  /**
   * Whether it has settled, at every instant.
   *
   * @param runs whether an instant counts as running; one that does not begins the wait anew
   */
  static boolean[] in(Timeline timeline, IntPredicate runs) {
    boolean[] settled = new boolean[timeline.size()];
    int settles = timeline.instants(SETTLES_S);
    int since = 0;
    for (int i = 0; i < settled.length; i++) {
      since = runs.test(i) ? since + 1 : 0;
      settled[i] = since > settles;
    }
    return settled;
  }
}
