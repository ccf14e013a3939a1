package heatwake.collector.recorder;

import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.FedAlike;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;

/**
 * The runs of a rig before the present one, however they ended. A message that was stored there but
 * whose acknowledgement did not reach the broker is delivered again, and must not be stored again
 * here. What came another way, of another heater or from another folder's rig, is not looked for:
 * it may have the same channel, time and value by chance. Used by the writer thread alone.
 */
final class EarlierRuns {
  static final EarlierRuns NONE = new EarlierRuns(List.of());

  /** A broker delivers again what came last: more runs back than this is no redelivery. */
  private static final int MOST = 8;

  /** A run that is over, and its last moment: what is stamped later is not in it. */
  private record Earlier(FedAlike run, long lastMs) {}

  private final List<Earlier> runs;

  private EarlierRuns(List<Earlier> runs) {
    this.runs = runs;
  }

  /** The latest runs of a rig before one. */
  static EarlierRuns before(Store store, RigFile rig, long run) {
    List<Earlier> runs = new ArrayList<>();
    for (FedAlike one : store.earlierOfRig(rig, run, MOST)) {
      store.lastReadingMs(one.run()).ifPresent(lastMs -> runs.add(new Earlier(one, lastMs)));
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
            .anyMatch(
                one ->
                    reading.timeMs() <= one.lastMs
                        && one.run.channels().contains(reading.channel())
                        && store.holds(one.run.run(), reading));
  }
}
