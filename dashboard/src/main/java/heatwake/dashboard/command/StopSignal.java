package heatwake.dashboard.command;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;

/** Lets a command end cleanly, with status 0, when it gets SIGTERM or SIGINT. */
final class StopSignal {
  private static final long PATIENCE_S = 60;

  private final CompletableFuture<Void> asked = new CompletableFuture<>();
  private final CountDownLatch handled = new CountDownLatch(1);
  private final Thread hook = new Thread(this::onShutdown, "stop-signal");

  private StopSignal() {}

  static StopSignal watch() {
    StopSignal stop = new StopSignal();
    Runtime.getRuntime().addShutdownHook(stop.hook);
    return stop;
  }

  private void onShutdown() {
    asked.complete(null);
    try {
      if (handled.await(PATIENCE_S, TimeUnit.SECONDS)) {
        // Else the status would be that of the signal; we were asked to stop, and did.
        Runtime.getRuntime().halt(Main.DONE);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Returns when a signal has come; if the other ends with a fault first, throws that. */
  void awaitOr(CompletableFuture<Void> other) throws InterruptedException, ExecutionException {
    CompletableFuture.anyOf(asked, other).get();
  }

  /** The command has ended cleanly. */
  void handled() {
    handled.countDown();
    if (!asked.isDone()) {
      Runtime.getRuntime().removeShutdownHook(hook);
    }
  }
}
