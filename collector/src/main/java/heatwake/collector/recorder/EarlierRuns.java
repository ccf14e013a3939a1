package heatwake.collector.recorder;

import heatwake.collector.probe.Reading;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * The runs of a rig before the present one, however they ended. A message that was stored there but
 * whose acknowledgement did not reach the broker is delivered again, and must not be stored again
 * here. Used by the writer thread alone.
 */
final class EarlierRuns {
  static final EarlierRuns NONE = new EarlierRuns(List.of());

  /** A broker delivers again what came last: more runs back than this is no redelivery. */
  private static final int MOST = 8;

  /** A run that is over, and its last moment: what is stamped later is not in it. */
  private record Earlier(long run, long lastMs) {}

  private final List<Earlier> runs;

  private EarlierRuns(List<Earlier> runs) {
    this.runs = runs;
  }

  /** The runs before one: the one that it follows, and the latest of its rig. */
  static EarlierRuns before(Store store, long run, OptionalLong followed) {
    List<Long> before = new ArrayList<>(store.earlierOfItsRig(run, MOST));
    if (followed.isPresent() && !before.contains(followed.getAsLong())) {
      before.add(followed.getAsLong());
    }
    List<Earlier> runs = new ArrayList<>();
    for (long one : before) {
      store.lastReadingMs(one).ifPresent(lastMs -> runs.add(new Earlier(one, lastMs)));
    }
    return runs.isEmpty() ? NONE : new EarlierRuns(runs);
  }

  /**
   * Takes out of some readings those that stand in an earlier run with time and value.
   *
   * @param duplicates gets what was taken out
   * @return what is left
   */
  List<Reading> without(Store store, List<Reading> readings, List<Reading> duplicates) {
    if (runs.isEmpty()) {
      return readings;
    }
    List<Reading> left = new ArrayList<>(readings.size());
    for (Reading reading : readings) {
      (stands(store, reading) ? duplicates : left).add(reading);
    }
    return left;
  }

  private boolean stands(Store store, Reading reading) {
    return reading.stampedByProbe()
        && runs.stream()
            .anyMatch(one -> reading.timeMs() <= one.lastMs && store.holds(one.run, reading));
  }
}
