package heatwake.collector.peer;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.concurrent.Callable;

/** Waits for what another thread or program brings about. The limit is only there to end a hang. */
public final class Eventually {
  private static final long LIMIT_NANOS = 60_000_000_000L;
  private static final long PAUSE_MS = 20;

  private Eventually() {}

  /** Returns once the condition holds; fails the test if it never does. */
  public static void that(String what, Callable<Boolean> condition) throws Exception {
    long start = System.nanoTime();
    while (!condition.call()) {
      if (System.nanoTime() - start > LIMIT_NANOS) {
        fail("never happened: " + what);
      }
      Thread.sleep(PAUSE_MS);
    }
  }
}
