package heatwake.collector.recorder;

import heatwake.collector.probe.Reading;
import heatwake.collector.store.Appended;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings of one run on their way into the store: those that an earlier run of the rig holds are
 * left out, and the run begins no later than the first of them arrived. Used by the writer thread
 * alone.
 */
final class Appending {
  private final long run;
  private final EarlierRuns earlier;

  /** The beginning in the store: not later than the first arrival, whatever cuts go by. */
  private long beganMs;

  private long unconfirmedBeganMs;
  private Appended unconfirmed = Appended.NOTHING;

  Appending(long run, long beganMs, EarlierRuns earlier) {
    this.run = run;
    this.beganMs = beganMs;
    this.unconfirmedBeganMs = beganMs;
    this.earlier = earlier;
  }

  /** Number of the run in its store. */
  long run() {
    return run;
  }

  /** When it began, UTC milliseconds. */
  long beganMs() {
    return beganMs;
  }

  /** The runs in which a reading of this one may lie already. */
  EarlierRuns earlier() {
    return earlier;
  }

  /** Writes readings into the commit under way. */
  void write(Store store, List<Reading> readings) {
    unconfirmed = readings.isEmpty() ? Appended.NOTHING : append(store, readings);
  }

  private Appended append(Store store, List<Reading> readings) {
    List<Reading> duplicates = new ArrayList<>();
    List<Reading> news = earlier.without(store, readings, duplicates);
    Appended now = store.append(run, news);
    duplicates.addAll(now.duplicates());
    long arrivedMs =
        news.stream()
            .filter(one -> !one.stampedByProbe())
            .mapToLong(Reading::timeMs)
            .min()
            .orElse(beganMs);
    if (arrivedMs < beganMs) {
      // It arrived before the cut and waited for this commit.
      store.beganAt(run, arrivedMs);
    }
    unconfirmedBeganMs = Math.min(beganMs, arrivedMs);
    return new Appended(now.stored(), duplicates, now.conflicts());
  }

  /** The commit is done; what became of the readings. */
  Appended confirm() {
    beganMs = Math.min(beganMs, unconfirmedBeganMs);
    Appended done = unconfirmed;
    unconfirmed = Appended.NOTHING;
    return done;
  }
}
