package heatwake.collector.store;

import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

/**
 * An SQLite file of runs (WAL, versioned schema). One writer at a time and any number of readers,
 * in this process or another. An instance is used by one thread at a time.
 */
public final class Store implements AutoCloseable {
  private Store() {}

  /**
   * Opens a store, making it or bringing it to the present schema if need be.
   *
   * @throws heatwake.collector.mistake.MistakeException if the file is not a store or cannot be
   *     written
   */
  public static Store open(Path file) {
    throw new UnsupportedOperationException("not built yet: " + file);
  }

  /**
   * Opens a store that must exist, for reading.
   *
   * @throws heatwake.collector.mistake.MistakeException if there is none at that path
   */
  public static Store openExisting(Path file) {
    throw new UnsupportedOperationException("not built yet: " + file);
  }

  /** Begins a run and returns its number. */
  public long beginRun(RigFile rig, long startMs) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** Ends a run. */
  public void endRun(long run, long endMs) {
    throw new UnsupportedOperationException("not built yet");
  }

  /**
   * Stores readings in one durable commit; see the class that implements it for what counts as
   * stored.
   */
  public void append(long run, List<Reading> readings) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** Records an event and returns its number. */
  public long addEvent(
      long run,
      EventKind kind,
      String subject,
      long startMs,
      OptionalLong endMs,
      long count,
      String text) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** Adds a note to a run. */
  public void addNote(long run, long timeMs, String text) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The runs, the oldest first. */
  public List<RunSummary> runs() {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The run being recorded now (the newest without an end), if any. */
  public OptionalLong runBeingRecorded() {
    throw new UnsupportedOperationException("not built yet");
  }

  /**
   * Loads a run as far as it has been recorded.
   *
   * @throws heatwake.collector.mistake.MistakeException naming the runs there are, if this is none
   */
  public Recording load(long run) {
    throw new UnsupportedOperationException("not built yet");
  }

  @Override
  public void close() {}
}
