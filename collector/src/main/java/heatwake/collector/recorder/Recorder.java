package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Brings what sources deliver to disk, for one database and any number of runs.
 *
 * <p><b>When a reading is safe.</b> One thread writes. It gathers deliveries for at most {@value
 * GatherTime#LONGEST_MS} ms, or until some of them are awaited by a peer, stores them in one synced
 * commit, and only then runs their {@link Delivery#whenDurable()}. So an acknowledged reading
 * survives a killed process and a power cut; of those that nobody awaits at most the last second is
 * lost.
 *
 * <p><b>When the database cannot be written</b> (locked, disk full), readings wait in memory, up to
 * a limit. Beyond it senders that await an acknowledgement wait with theirs; what nobody awaits is
 * dropped and counted in an event. Writing is tried again until it succeeds.
 */
public final class Recorder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);

  /** A source waits so long for a database that cannot be written; its peer is waiting for it. */
  private static final long SESSION_WAIT_MS = 2000;

  private final RecorderSettings settings;
  private final Store store;
  private final RunLocks locks;
  private final RunTime time;
  private final CrashedRuns crashed = new CrashedRuns();
  private final Writer writer;
  private final WriterQueue queue;

  private Recorder(Path database, RecorderSettings settings) {
    this.settings = settings;
    this.store = Store.open(database);
    this.locks = RunLocks.of(database);
    this.time = new RunTime(settings.clock());
    this.writer = new Writer(settings, store, locks, time);
    this.queue = writer.queue();
  }

  /**
   * Opens a database for recording. Runs left without an end by a recorder that was killed are
   * ended at their last reading, and say so in an event.
   *
   * @throws heatwake.collector.mistake.MistakeException if the file is not a database of ours or
   *     cannot be written
   */
  public static Recorder open(Path database, RecorderSettings settings) {
    Recorder recorder = new Recorder(database, settings);
    try {
      recorder.crashed.end(recorder.store, recorder.locks);
    } catch (RuntimeException e) {
      recorder.locks.close();
      recorder.store.close();
      throw e;
    }
    recorder.writer.start();
    return recorder;
  }

  /**
   * Begins a run; it goes on from one of its rig that was found broken off.
   *
   * @throws heatwake.collector.mistake.MistakeException if a living recorder records this rig into
   *     this database already: two would take ports and broker sessions from each other for ever
   */
  public RecordedRun begin(RigFile rig) {
    RecordedRun run = new RecordedRun(this, rig, settings.clock(), time);
    queue.call(
        () -> {
          AlreadyRecorded.refuse(store, locks, rig);
          OptionalLong follows = crashed.of(store, rig);
          writer.committing().commit(() -> run.begin(store, follows));
          follows.ifPresent(crashed::wentOn);
          locks.take(run.id());
          run.happened(EventKind.RECORDER_STARTED, "recorder", "recording began");
          writer.add(run);
        });
    return run;
  }

  /** Completes when the recorder has ended; exceptionally if a fault ended it. */
  public CompletableFuture<Void> ended() {
    return writer.ended();
  }

  /** Why the database cannot be written now, if it cannot. */
  public Optional<String> blocked() {
    return writer.committing().blocked();
  }

  /** The database it records into. */
  public Path database() {
    return store.file();
  }

  /** Time since the writer thread did something, be it trying in vain. */
  public Duration sinceWriterMoved() {
    return writer.committing().sinceMoved();
  }

  /** Readings in memory that are not on disk yet. */
  public int waiting() {
    return queue.waiting();
  }

  /** The runs being recorded. */
  public List<RecordedRun> runs() {
    return writer.runs();
  }

  void take(RecordedRun run, Delivery delivery, long arrivedMs) throws InterruptedException {
    queue.deliver(run, delivery, arrivedMs);
  }

  List<MessageMark> delivered(String session) {
    List<MessageMark> marks = new ArrayList<>();
    queue.call(() -> marks.addAll(store.delivered(session)));
    return marks;
  }

  /** Forgets a session before anything that comes in it from here on is stored. */
  void sessionIsNew(String session) throws InterruptedException {
    Runnable removal = () -> writer.committing().commit(() -> store.removeDelivered(session));
    if (!queue.call(removal, SESSION_WAIT_MS)) {
      LOG.info("the database cannot be written; the source goes on without waiting for it");
    }
  }

  void end(RecordedRun run) {
    queue.call(() -> writer.end(run));
  }

  /** Stores all that was delivered, ends the runs and frees the database. */
  @Override
  public void close() {
    writer.close();
  }
}
