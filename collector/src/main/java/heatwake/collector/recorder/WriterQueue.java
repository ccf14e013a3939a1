package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Delivery;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * What waits for the writer thread, from any thread. Readings wait in memory up to a limit; beyond
 * it senders that await an acknowledgement wait with theirs, and what nobody awaits is dropped and
 * counted in an event.
 */
final class WriterQueue {
  private static final long MEMORY_WAIT_MS = 2000;

  private final int readingsInMemory;
  private final CompletableFuture<Void> ended;
  private final Semaphore memory;
  private final BlockingQueue<Work> queue = new LinkedBlockingQueue<>();

  /** Something for the writer thread to do. */
  sealed interface Work {
    /**
     * A delivery to store.
     *
     * @param weight memory to give back once it is on disk
     */
    record Deliver(RecordedRun run, Delivery delivery, long arrivedMs, int weight)
        implements Work {}

    /** Something to be done between commits. */
    record Call(Runnable action, CompletableFuture<Void> done) implements Work {
      /** Does it, and tells who waits how it went. */
      void run() {
        try {
          action.run();
          done.complete(null);
        } catch (RuntimeException e) {
          done.completeExceptionally(e);
        }
      }
    }
  }

  /**
   * An empty queue.
   *
   * @param ended completes when nothing is taken from it any more
   */
  WriterQueue(int readingsInMemory, CompletableFuture<Void> ended) {
    this.readingsInMemory = readingsInMemory;
    this.ended = ended;
    this.memory = new Semaphore(readingsInMemory);
  }

  /** Adds a delivery; waits while memory is full. */
  void deliver(RecordedRun run, Delivery delivery, long arrivedMs) throws InterruptedException {
    int weight = Math.min(Math.max(1, delivery.readings().size()), readingsInMemory);
    while (!memory.tryAcquire(weight, MEMORY_WAIT_MS, TimeUnit.MILLISECONDS)) {
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
    queue.add(new Work.Deliver(run, delivery, arrivedMs, weight));
  }

  /** What was delivered is on disk. */
  void release(int weight) {
    memory.release(weight);
  }

  /** Readings in memory that are not on disk yet. */
  int waiting() {
    return readingsInMemory - memory.availablePermits();
  }

  /** Has something done by the writer thread and returns when it is; throws what it throws. */
  void call(Runnable action) {
    try {
      added(action).join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }
  }

  /**
   * Has something done by the writer thread and returns when it is, or after a while.
   *
   * @return whether it was done by then; if not, it is done later, as long as the thread goes on
   */
  boolean call(Runnable action, long patienceMs) throws InterruptedException {
    try {
      added(action).get(patienceMs, TimeUnit.MILLISECONDS);
      return true;
    } catch (ExecutionException | TimeoutException e) {
      return false;
    }
  }

  private CompletableFuture<Object> added(Runnable action) {
    CompletableFuture<Void> done = new CompletableFuture<>();
    queue.add(new Work.Call(action, done));
    return CompletableFuture.anyOf(done, ended);
  }

  /** The next thing to do; null if none comes in that time. */
  Work next(long patienceNs) throws InterruptedException {
    return patienceNs > 0 ? queue.poll(patienceNs, TimeUnit.NANOSECONDS) : queue.poll();
  }

  boolean isEmpty() {
    return queue.isEmpty();
  }

  /** Whoever waits for the next thing looks up. */
  void wake() {
    queue.add(new Work.Call(() -> {}, new CompletableFuture<>()));
  }
}
