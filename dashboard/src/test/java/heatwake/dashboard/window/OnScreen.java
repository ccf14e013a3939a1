package heatwake.dashboard.window;

import static org.assertj.swing.timing.Pause.pause;
import static org.assertj.swing.timing.Timeout.timeout;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.lang.reflect.InvocationTargetException;
import java.util.function.BooleanSupplier;
import javax.swing.SwingUtilities;
import org.assertj.swing.timing.Condition;

/** What tests with a real window have in common. */
final class OnScreen {
  /** How long a loaded machine may take; a test that passes does not wait for it. */
  private static final long PATIENCE_MS = 60_000;

  private OnScreen() {}

  /** Skips the tests, saying so, where there is no display; where CI=true they fail instead. */
  static void require() {
    boolean there = Display.isThere();
    if (!there && "true".equals(System.getenv("CI"))) {
      throw new AssertionError("no display; run the tests under xvfb-run");
    }
    assumeTrue(there, "window tests are skipped: no display; run them under xvfb-run");
  }

  /** Waits until a condition, asked on the event thread, holds. */
  static void waitUntil(String what, BooleanSupplier holds) {
    pause(
        new Condition(what) {
          @Override
          public boolean test() {
            boolean[] held = new boolean[1];
            try {
              SwingUtilities.invokeAndWait(() -> held[0] = holds.getAsBoolean());
            } catch (InterruptedException | InvocationTargetException e) {
              throw new IllegalStateException(e);
            }
            return held[0];
          }
        },
        timeout(PATIENCE_MS));
  }
}
