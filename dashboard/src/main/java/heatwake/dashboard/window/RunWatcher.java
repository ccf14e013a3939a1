package heatwake.dashboard.window;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.RunFollower;
import heatwake.collector.store.RunHeading;
import heatwake.collector.store.Store;
import heatwake.collector.store.StoreBlockedException;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads the store again and again on a thread of its own, while a recorder may be writing it, and
 * analyses the run so far. Of a run it has seen it reads only what came in since, and nothing while
 * nobody has changed the store; after each look it rests for several times as long as the look
 * took, so that it never takes more than a fraction of a core, however long the run.
 */
final class RunWatcher implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RunWatcher.class);

  private static final long LEAST_REST_MS = 1000;
  private static final long REST_PER_WORK = 6;

  /** A number of changes that no store has. */
  private static final long NEVER = -1;

  /** Who is told. Called on the watcher's thread. */
  interface Listener {
    void saw(Snapshot snapshot);

    /** The store could not be read; the next look tries again. */
    void failed(String why);
  }

  private final Path file;
  private final UnitChoice units;
  private final Moment moment;
  private final Listener listener;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread made = new Thread(work, "run-watcher");
            made.setDaemon(true);
            return made;
          });
  private final GrowthClock growth = new GrowthClock();

  /**
   * What a look found.
   *
   * @param changes the store's number of changes before it looked
   * @param runs the runs there are
   * @param follower reads the run that is shown
   * @param shown the run that is shown; null while there is none
   */
  private record Seen(
      long changes, List<RunHeading> runs, RunFollower follower, Snapshot.Shown shown) {}

  /** The run the person chose; empty to follow the newest. Only touched on the thread. */
  private OptionalLong chosen = OptionalLong.empty();

  private Store store;
  private Seen seen;
  private ScheduledFuture<?> nextLook;
  private boolean closed;

  RunWatcher(Path file, UnitChoice units, Moment moment, Listener listener) {
    this.file = file;
    this.units = units;
    this.moment = moment;
    this.listener = listener;
  }

  void start() {
    thread.execute(this::lookAndRest);
  }

  /** Shows a run; the newest run is followed by whatever run comes after it. */
  void choose(long run) {
    thread.execute(
        () -> {
          chosen = OptionalLong.of(run);
          lookAnew();
        });
  }

  /** Stores a note in the run that is shown, at the present on the readings' clock. */
  void addNote(String text, Consumer<Optional<String>> whenDone) {
    thread.execute(
        () -> {
          try {
            Store open = store();
            if (seen == null || seen.shown() == null) {
              throw new IllegalStateException("the run is no longer there");
            }
            open.addNote(seen.shown().heading().id(), noteTimeMs(), text);
            lookAnew();
            whenDone.accept(Optional.empty());
          } catch (RuntimeException e) {
            LOG.debug("note not stored", e);
            whenDone.accept(Optional.of(e.getMessage()));
          }
        });
  }

  @Override
  public void close() {
    thread.execute(
        () -> {
          closed = true;
          if (nextLook != null) {
            nextLook.cancel(false);
          }
          closeStore();
        });
    thread.shutdown();
  }

  private long noteTimeMs() {
    return seen.shown().liveness().nowMs();
  }

  private void lookAndRest() {
    long began = System.nanoTime();
    look();
    long tookMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
    if (!closed) {
      nextLook =
          thread.schedule(
              this::lookAndRest,
              Math.max(LEAST_REST_MS, tookMs * REST_PER_WORK),
              TimeUnit.MILLISECONDS);
    }
  }

  private void look() {
    try {
      long changes = store().changesByOthers();
      seen = seen != null && seen.changes() == changes ? later(seen) : found(changes);
      listener.saw(new Snapshot(seen.runs(), Optional.ofNullable(seen.shown())));
    } catch (StoreBlockedException e) {
      fail(e);
    } catch (RuntimeException e) {
      // What was read of a store that is damaged or another one now is worth nothing.
      closeStore();
      fail(e);
    }
  }

  private void fail(RuntimeException why) {
    LOG.debug("the store could not be read", why);
    listener.failed(why.getMessage());
  }

  /** Looks although nobody else has changed the store. */
  private void lookAnew() {
    if (seen != null) {
      seen = new Seen(NEVER, seen.runs(), seen.follower(), seen.shown());
    }
    look();
  }

  private Store store() {
    if (store != null && store.isReplaced()) {
      closeStore();
    }
    if (store == null) {
      store = Store.openExisting(file);
    }
    return store;
  }

  private void closeStore() {
    seen = null;
    if (store != null) {
      Store open = store;
      store = null;
      open.close();
    }
  }

  /** The same some time later. */
  private Seen later(Seen before) {
    Snapshot.Shown shown = before.shown();
    return shown == null
        ? before
        : new Seen(
            before.changes(),
            before.runs(),
            before.follower(),
            new Snapshot.Shown(
                shown.heading(),
                shown.recording(),
                shown.findings(),
                shown.charts(),
                liveness(shown.heading(), shown.recording())));
  }

  private Seen found(long changes) {
    List<RunHeading> runs = store.runHeadings();
    Optional<RunHeading> wanted = wanted(runs);
    if (wanted.isEmpty()) {
      return new Seen(changes, runs, null, null);
    }
    RunHeading heading = wanted.get();
    boolean same = seen != null && seen.shown() != null && seen.follower().run() == heading.id();
    RunFollower follower = same ? seen.follower() : store.follow(heading.id());
    Recording recording = follower.read();
    Findings findings = units.worded(Analysis.of(recording));
    RunCharts charts = RunCharts.of(recording, findings, units, moment);
    return new Seen(
        changes,
        runs,
        follower,
        new Snapshot.Shown(heading, recording, findings, charts, liveness(heading, recording)));
  }

  private Liveness liveness(RunHeading heading, Recording recording) {
    return growth.seen(heading, recording.endMs(), System.currentTimeMillis());
  }

  private Optional<RunHeading> wanted(List<RunHeading> runs) {
    if (runs.isEmpty()) {
      return Optional.empty();
    }
    RunHeading newest = runs.get(runs.size() - 1);
    if (chosen.isPresent() && chosen.getAsLong() >= newest.id()) {
      chosen = OptionalLong.empty();
    }
    return runs.stream()
        .filter(run -> chosen.isPresent() && run.id() == chosen.getAsLong())
        .findFirst()
        .or(() -> Optional.of(newest));
  }
}
