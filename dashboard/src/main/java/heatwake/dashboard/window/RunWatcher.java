package heatwake.dashboard.window;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
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
 * analyses the run so far. A run that has not changed is not read again; after each look it rests
 * for several times as long as the look took, so that it never takes more than a fraction of a
 * core, however long the run.
 */
final class RunWatcher implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RunWatcher.class);

  private static final long LEAST_REST_MS = 1000;
  private static final long REST_PER_WORK = 6;

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

  /** The run the person chose; empty to follow the newest. Only touched on the thread. */
  private OptionalLong chosen = OptionalLong.empty();

  private Store store;
  private Snapshot.Shown last;
  private long lastCount = -1;
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
          look();
        });
  }

  /** Stores a note in the run that is shown, at the present on the readings' clock. */
  void addNote(String text, Consumer<Optional<String>> whenDone) {
    thread.execute(
        () -> {
          try {
            store().addNote(last.summary().id(), noteTimeMs(), text);
            lastCount = -1;
            look();
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
          if (store != null) {
            store.close();
            store = null;
          }
        });
    thread.shutdown();
  }

  private long noteTimeMs() {
    return last.liveness().nowMs();
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
      List<RunSummary> runs = store().runs();
      Optional<RunSummary> wanted = wanted(runs);
      last = wanted.map(this::shown).orElse(null);
      listener.saw(new Snapshot(runs, Optional.ofNullable(last)));
    } catch (RuntimeException e) {
      LOG.debug("the store could not be read", e);
      listener.failed(e.getMessage());
    }
  }

  private Store store() {
    if (store == null) {
      store = Store.openExisting(file);
    }
    return store;
  }

  private Optional<RunSummary> wanted(List<RunSummary> runs) {
    if (runs.isEmpty()) {
      return Optional.empty();
    }
    RunSummary newest = runs.get(runs.size() - 1);
    if (chosen.isPresent() && chosen.getAsLong() >= newest.id()) {
      chosen = OptionalLong.empty();
    }
    return runs.stream()
        .filter(run -> chosen.isPresent() && run.id() == chosen.getAsLong())
        .findFirst()
        .or(() -> Optional.of(newest));
  }

  private Snapshot.Shown shown(RunSummary summary) {
    boolean same =
        last != null && last.summary().id() == summary.id() && lastCount == summary.readings();
    Recording recording = same ? last.recording() : store().load(summary.id());
    Findings findings = same ? last.findings() : Analysis.of(recording);
    RunCharts charts = same ? last.charts() : RunCharts.of(recording, findings, units, moment);
    lastCount = summary.readings();
    Liveness liveness = growth.seen(summary, recording.endMs(), System.currentTimeMillis());
    return new Snapshot.Shown(summary, recording, findings, charts, liveness);
  }
}
