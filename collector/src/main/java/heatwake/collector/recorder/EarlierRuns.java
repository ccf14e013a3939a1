package heatwake.collector.recorder;

import heatwake.collector.probe.Reading;
import heatwake.collector.rig.Feeds;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.FedAlike;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * The runs of a rig before the present one, however they ended. A message that was stored there but
 * whose acknowledgement did not reach the broker is delivered again, and must not be stored again
 * here. What came another way, of another heater or from another folder's rig, is not looked for:
 * it may have the same channel, time and value by chance. Used by the writer thread alone.
 */
final class EarlierRuns {
  static final EarlierRuns NONE = new EarlierRuns(List.of());

  /** A run that is over, and the stamps it has: what lies outside is not in it. */
  private record Earlier(FedAlike run, long firstMs, long lastMs) {
    boolean mayHold(Reading reading) {
      return firstMs <= reading.timeMs()
          && reading.timeMs() <= lastMs
          && run.channels().contains(reading.channel());
    }
  }

  private final List<Earlier> runs;

  /** Nearly every reading is later than all of them, and is not looked for. */
  private final long lastMs;

  private EarlierRuns(List<Earlier> runs) {
    this.runs = List.copyOf(runs);
    this.lastMs = runs.stream().mapToLong(Earlier::lastMs).max().orElse(Long.MIN_VALUE);
  }

  /**
   * The runs of a rig before one, all of them: a probe with a memory of its own may send what it
   * holds from weeks ago.
   */
  static EarlierRuns before(Store store, RigFile rig, long run) {
    List<Earlier> runs = new ArrayList<>();
    for (FedAlike one : store.earlierOfRig(rig, run)) {
      addIfAny(store, one, runs);
    }
    return runs.isEmpty() ? NONE : new EarlierRuns(runs);
  }

  /** These and a run of the same rig that has just ended, without looking for the others again. */
  EarlierRuns and(Store store, RigFile rig, long run) {
    Feeds feeds = Feeds.of(rig);
    List<Earlier> all = new ArrayList<>();
    addIfAny(store, new FedAlike(run, feeds.sharedWith(feeds)), all);
    all.addAll(runs);
    return new EarlierRuns(all.subList(0, Math.min(all.size(), Store.MOST_EARLIER_RUNS)));
  }

  private static void addIfAny(Store store, FedAlike run, List<Earlier> runs) {
    OptionalLong firstMs = store.firstReadingMs(run.run());
    OptionalLong lastMs = store.lastReadingMs(run.run());
    if (firstMs.isPresent() && lastMs.isPresent()) {
      runs.add(new Earlier(run, firstMs.getAsLong(), lastMs.getAsLong()));
    }
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
        && reading.timeMs() <= lastMs
        && runs.stream()
            .anyMatch(one -> one.mayHold(reading) && store.holds(one.run.run(), reading));
  }
}
