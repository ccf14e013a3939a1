package heatwake.collector.recorder;

import heatwake.collector.clock.ClockStep;
import heatwake.collector.store.Store;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The thread that writes a recorder's database: commit after commit, and a look around between. */
final class Writer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Writer.class);

  private static final long LOOK_NS = TimeUnit.SECONDS.toNanos(1);

  private final RecorderSettings settings;
  private final Store store;
  private final RunLocks locks;
  private final RunTime time;
  private final List<RecordedRun> runs = new CopyOnWriteArrayList<>();
  private final CompletableFuture<Void> ended = new CompletableFuture<>();
  private final WriterQueue queue;
  private final PatientStore committing;
  private final GatherTime gatherTime = new GatherTime();
  private final Thread thread = new Thread(this::write, "recorder");
  private volatile boolean closing;
  private long lastLookNs;

  /** A thread that is not started. When it ends it frees the locks and closes the store. */
  Writer(RecorderSettings settings, Store store, RunLocks locks, RunTime time) {
    this.settings = settings;
    this.store = store;
    this.locks = locks;
    this.time = time;
    this.queue = new WriterQueue(settings.readingsInMemory(), ended);
    this.committing = new PatientStore(store, runs, queue::waiting);
  }

  /** What waits for it. */
  WriterQueue queue() {
    return queue;
  }

  /** How it writes; for actions that are called on the thread, and to ask how it goes. */
  PatientStore committing() {
    return committing;
  }

  /** The runs being recorded. */
  List<RecordedRun> runs() {
    return List.copyOf(runs);
  }

  /** Completes when it has ended; exceptionally if a fault ended it. */
  CompletableFuture<Void> ended() {
    return ended.copy();
  }

  void start() {
    lastLookNs = settings.clock().monotonicNs();
    thread.start();
  }

  /** Stores all that was delivered, ends the runs, and returns when that is done. */
  @Override
  public void close() {
    closing = true;
    committing.hurry();
    queue.wake();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  // What follows runs on the thread.

  private void write() {
    try {
      while (!closing || !queue.isEmpty()) {
        workOnce();
      }
      look();
      for (RecordedRun run : runs) {
        end(run);
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
    Optional<WriterQueue.Work.Call> call = gather(gathering);
    if (!gathering.isEmpty()) {
      committing.commit(() -> gathering.write(store));
      // Before anybody is told: who is told that it is safe finds nothing of it waiting.
      queue.release(gathering.weight());
      gathering.confirm();
      if (gathering.isAwaited()) {
        gatherTime.told(System.nanoTime());
      }
    }
    lookAround();
    call.ifPresent(WriterQueue.Work.Call::run);
  }

  /** Fills a commit; stops early at a call, which is to be done after it. */
  private Optional<WriterQueue.Work.Call> gather(Gathering gathering) throws InterruptedException {
    long startNs = System.nanoTime();
    while (!gathering.isFull()) {
      boolean wait = !closing && !gathering.isUrgent();
      long leftNs = wait ? startNs + gatherTime.ns() - System.nanoTime() : 0;
      WriterQueue.Work work = queue.next(leftNs);
      if (work == null) {
        return Optional.empty();
      }
      if (work instanceof WriterQueue.Work.Call call) {
        return Optional.of(call);
      }
      WriterQueue.Work.Deliver deliver = (WriterQueue.Work.Deliver) work;
      if (deliver.delivery().isAwaited()) {
        gatherTime.came(System.nanoTime());
      }
      gathering.add(deliver.run(), deliver.delivery(), deliver.arrivedMs(), deliver.weight());
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

  /** A run is recorded from here on; to be called on the thread. */
  void add(RecordedRun run) {
    runs.add(run);
  }

  /** Ends a run; to be called on the thread. */
  void end(RecordedRun run) {
    committing.commit(() -> run.writeEnd(store, "recording was stopped"));
    locks.free(run.id());
    runs.remove(run);
  }
}
