package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/** How flags lie to each other in time. */
final class Overlap {
  private Overlap() {}

  /** Part of a flag's time, 0 to 1, in which another stands too. */
  static double share(Flag flag, Flag other) {
    long from = Math.max(flag.startMs(), other.startMs());
    long to = Math.min(flag.endMs(), other.endMs());
    if (to < from) {
      return 0;
    }
    long length = flag.endMs() - flag.startMs();
    return length == 0 ? 1 : (double) (to - from) / length;
  }

  static boolean any(Flag one, Flag other) {
    return one.startMs() <= other.endMs() && one.endMs() >= other.startMs();
  }
}
