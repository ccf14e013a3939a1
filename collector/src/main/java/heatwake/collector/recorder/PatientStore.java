package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.store.Store;
import heatwake.collector.store.StoreBlockedException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.IntSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Commits to a database that other programs may lock and whose disk may fill up: tries until it
 * succeeds, and tells the runs meanwhile. Commits come from one thread; others may ask how it goes.
 */
final class PatientStore {
  private static final Logger LOG = LoggerFactory.getLogger(PatientStore.class);

  private static final Duration RETRY = Duration.ofMillis(500);

  /** On closing, how long a database that cannot be written is tried. */
  private static final long CLOSE_PATIENCE_NS = TimeUnit.SECONDS.toNanos(30);

  private static final String DATABASE = "database";

  private final Store store;
  private final List<RecordedRun> runs;
  private final IntSupplier waiting;
  private volatile boolean closing;
  private volatile long movedNs = System.nanoTime();
  private volatile Optional<String> blocked = Optional.empty();
  private long closingSinceNs;

  /**
   * Commits to a store.
   *
   * @param runs those to tell while it cannot be written
   * @param waiting how many readings are not stored
   */
  PatientStore(Store store, List<RecordedRun> runs, IntSupplier waiting) {
    this.store = store;
    this.runs = runs;
    this.waiting = waiting;
  }

  /** Why the database cannot be written now, if it cannot. */
  Optional<String> blocked() {
    return blocked;
  }

  /** The writing thread does something. */
  void moved() {
    movedNs = System.nanoTime();
  }

  /** Time since the writing thread did something, be it trying in vain. */
  Duration sinceMoved() {
    return Duration.ofNanos(System.nanoTime() - movedNs);
  }

  /** From here on it is tried with limited patience. */
  void hurry() {
    closing = true;
  }

  /**
   * Does some work in one commit, however long it takes.
   *
   * @throws StoreBlockedException if in a hurry, and it takes too long
   */
  void commit(Runnable work) {
    while (true) {
      try {
        store.inOneCommit(work);
        if (blocked.isPresent()) {
          blocked = Optional.empty();
          LOG.info("the database can be written again; nothing stored was lost");
          runs.forEach(run -> run.ended(EventKind.STORE_BLOCKED, DATABASE));
        }
        return;
      } catch (StoreBlockedException e) {
        if (blocked.isEmpty()) {
          blocked = Optional.of(e.getMessage());
          LOG.warn("{}; readings wait in memory", e.getMessage());
          runs.forEach(run -> run.began(EventKind.STORE_BLOCKED, DATABASE, e.getMessage()));
        }
        pauseBeforeRetry(e);
      }
    }
  }

  private void pauseBeforeRetry(StoreBlockedException fault) {
    moved();
    long nowNs = System.nanoTime();
    if (closing && closingSinceNs == 0) {
      closingSinceNs = nowNs;
    }
    if (closing && nowNs - closingSinceNs > CLOSE_PATIENCE_NS) {
      LOG.error("stopping although {} readings could not be stored", waiting.getAsInt());
      throw fault;
    }
    try {
      Thread.sleep(RETRY.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw fault;
    }
  }
}
