package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.clock.ClockStep;
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
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
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

  private static final long LOOK_NS = TimeUnit.SECONDS.toNanos(1);
  private static final long MEMORY_WAIT_MS = 2000;

  /** A source waits so long for a database that cannot be written; its peer is waiting for it. */
  private static final long SESSION_WAIT_MS = 2000;

  private final RecorderSettings settings;
  private final Store store;
  private final PatientStore committing;
  private final RunLocks locks;
  private final RunTime time;
  private final BlockingQueue<Work> queue = new LinkedBlockingQueue<>();
  private final GatherTime gatherTime = new GatherTime();
  private final Semaphore memory;
  private final List<RecordedRun> runs = new CopyOnWriteArrayList<>();
  private final CrashedRuns crashed = new CrashedRuns();
  private final CompletableFuture<Void> ended = new CompletableFuture<>();
  private final Thread writer;
  private volatile boolean closing;
  private long lastLookNs;

  /** Something for the writer thread to do. */
  private sealed interface Work {
    record Deliver(RecordedRun run, Delivery delivery, long arrivedMs) implements Work {}

    record Call(Runnable action, CompletableFuture<Void> done) implements Work {}
  }

  private Recorder(Path database, RecorderSettings settings) {
    this.settings = settings;
    this.store = Store.open(database);
    this.locks = RunLocks.of(database);
    this.time = new RunTime(settings.clock());
    this.memory = new Semaphore(settings.readingsInMemory());
    this.committing = new PatientStore(store, runs, this::waiting);
    this.writer = new Thread(this::write, "recorder");
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
    recorder.lastLookNs = settings.clock().monotonicNs();
    recorder.writer.start();
    return recorder;
  }

  /** Begins a run; it goes on from one of its rig that was found broken off. */
  public RecordedRun begin(RigFile rig) {
    RecordedRun run = new RecordedRun(this, rig, settings.clock(), time);
    onWriter(
        () -> {
          OptionalLong follows = crashed.of(store, rig);
          committing.commit(() -> run.begin(store, follows));
          follows.ifPresent(crashed::wentOn);
          locks.take(run.id());
          run.happened(EventKind.RECORDER_STARTED, "recorder", "recording began");
          runs.add(run);
        });
    return run;
  }

  /** Completes when the recorder has ended; exceptionally if a fault ended it. */
  public CompletableFuture<Void> ended() {
    return ended.copy();
  }

  /** Why the database cannot be written now, if it cannot. */
  public Optional<String> blocked() {
    return committing.blocked();
  }

  /** The database it records into. */
  public Path database() {
    return store.file();
  }

  /** Time since the writer thread did something, be it trying in vain. */
  public Duration sinceWriterMoved() {
    return committing.sinceMoved();
  }

  /** Readings in memory that are not on disk yet. */
  public int waiting() {
    return settings.readingsInMemory() - memory.availablePermits();
  }

  /** The runs being recorded. */
  public List<RecordedRun> runs() {
    return List.copyOf(runs);
  }

  void take(RecordedRun run, Delivery delivery, long arrivedMs) throws InterruptedException {
    int size = weight(delivery);
    while (!memory.tryAcquire(size, MEMORY_WAIT_MS, TimeUnit.MILLISECONDS)) {
      if (ended.isDone()) {
        return;
      }
      run.heldUp();
      if (!delivery.isAwaited()) {
        run.happened(
            EventKind.STORE_BLOCKED,
            "memory",
            "readings dropped, because the database could not be written and memory was full",
            delivery.readings().size());
        return;
      }
    }
    queue.add(new Work.Deliver(run, delivery, arrivedMs));
  }

  private int weight(Delivery delivery) {
    return Math.min(Math.max(1, delivery.readings().size()), settings.readingsInMemory());
  }

  List<MessageMark> delivered(String session) {
    List<MessageMark> marks = new ArrayList<>();
    onWriter(() -> marks.addAll(store.delivered(session)));
    return marks;
  }

  /** Forgets a session before anything that comes in it from here on is stored. */
  void sessionIsNew(String session) throws InterruptedException {
    CompletableFuture<Void> done = new CompletableFuture<>();
    queue.add(new Work.Call(() -> committing.commit(() -> store.removeDelivered(session)), done));
    try {
      CompletableFuture.anyOf(done, ended).get(SESSION_WAIT_MS, TimeUnit.MILLISECONDS);
    } catch (ExecutionException | TimeoutException e) {
      LOG.info("the database cannot be written; the source goes on without waiting for it");
    }
  }

  void end(RecordedRun run) {
    onWriter(() -> end(run, "recording was stopped"));
  }

  private void onWriter(Runnable action) {
    CompletableFuture<Void> done = new CompletableFuture<>();
    queue.add(new Work.Call(action, done));
    try {
      CompletableFuture.anyOf(done, ended).join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }
  }

  /** Stores all that was delivered, ends the runs and frees the database. */
  @Override
  public void close() {
    closing = true;
    committing.hurry();
    queue.add(new Work.Call(() -> {}, new CompletableFuture<>()));
    try {
      writer.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  // What follows runs on the writer thread.

  private void write() {
    try {
      while (!closing || !queue.isEmpty()) {
        workOnce();
      }
      look();
      for (RecordedRun run : runs) {
        end(run, "recording was stopped");
      }
      ended.complete(null);
    } catch (InterruptedException e) {
      ended.completeExceptionally(e);
    } catch (RuntimeException e) {
      LOG.error("recording ended: {}", e.getMessage());
      ended.completeExceptionally(e);
    } finally {
      locks.close();
      store.close();
    }
  }

  private void workOnce() throws InterruptedException {
    committing.moved();
    Gathering gathering = new Gathering();
    Optional<Work.Call> call = gather(gathering);
    if (!gathering.isEmpty()) {
      committing.commit(() -> gathering.write(store));
      // Before anybody is told: who is told that it is safe finds nothing of it waiting.
      memory.release(gathering.weight());
      gathering.confirm();
      if (gathering.isAwaited()) {
        gatherTime.told(System.nanoTime());
      }
    }
    lookAround();
    call.ifPresent(
        one -> {
          try {
            one.action().run();
            one.done().complete(null);
          } catch (RuntimeException e) {
            one.done().completeExceptionally(e);
          }
        });
  }

  /** Fills a commit; stops early at a call, which is to be done after it. */
  private Optional<Work.Call> gather(Gathering gathering) throws InterruptedException {
    long startNs = System.nanoTime();
    while (!gathering.isFull()) {
      boolean wait = !closing && !gathering.isUrgent();
      long leftNs = wait ? startNs + gatherTime.ns() - System.nanoTime() : 0;
      Work work = leftNs > 0 ? queue.poll(leftNs, TimeUnit.NANOSECONDS) : queue.poll();
      if (work == null) {
        return Optional.empty();
      }
      if (work instanceof Work.Call call) {
        return Optional.of(call);
      }
      Work.Deliver deliver = (Work.Deliver) work;
      Delivery delivery = deliver.delivery();
      if (delivery.isAwaited()) {
        gatherTime.came(System.nanoTime());
      }
      gathering.add(deliver.run(), delivery, deliver.arrivedMs(), weight(delivery));
    }
    return Optional.empty();
  }

  /** Once a second: clock steps, silent probes, events to be written, runs to be cut. */
  private void lookAround() {
    long nowNs = settings.clock().monotonicNs();
    if (nowNs - lastLookNs >= LOOK_NS) {
      lastLookNs = nowNs;
      look();
    }
  }

  private void look() {
    long nowMs = time.nowMs();
    for (ClockStep step : time.takeSteps()) {
      LOG.warn("{}", step.text());
      runs.forEach(run -> run.stepped(step));
    }
    runs.forEach(RecordedRun::look);
    List<RecordedRun> news = runs.stream().filter(RecordedRun::hasNews).toList();
    if (!news.isEmpty()) {
      committing.commit(() -> news.forEach(run -> run.write(store, List.of())));
      news.forEach(RecordedRun::confirm);
    }
    for (RecordedRun run : runs) {
      if (settings.cut().isDue(run.beganMs(), nowMs, run.stored())) {
        cut(run);
      }
    }
  }

  private void cut(RecordedRun run) {
    long before = run.id();
    committing.commit(() -> run.writeCut(store));
    run.confirmCut();
    locks.take(run.id());
    locks.free(before);
    LOG.info("run {} was cut; recording goes on as run {}", before, run.id());
  }

  private void end(RecordedRun run, String why) {
    committing.commit(() -> run.writeEnd(store, why));
    locks.free(run.id());
    runs.remove(run);
  }
}
