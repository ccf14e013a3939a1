package heatwake.dashboard.window;

import heatwake.collector.store.RunHeading;
import java.util.OptionalLong;

/** Notes when a run was last seen to grow. */
final class GrowthClock {
  /** A newest reading further than this from the machine's clock carries another clock. */
  private static final long SAME_CLOCK_MS = 24 * 3_600_000L;

  private long run = -1;
  private long newestMs;
  private long grewAtMs;

  /**
   * Takes note of a run as it is now.
   *
   * @param newestMs time of its newest reading
   * @param clockMs the machine's clock
   */
  Liveness seen(RunHeading heading, long newestMs, long clockMs) {
    if (heading.id() != run) {
      run = heading.id();
      // At first sight one can only trust the readings' clock, if it can be this machine's at all.
      long age = clockMs - newestMs;
      grewAtMs = age >= 0 && age < SAME_CLOCK_MS ? newestMs : clockMs;
    } else if (newestMs != this.newestMs) {
      grewAtMs = clockMs;
    }
    this.newestMs = newestMs;
    return new Liveness(
        newestMs,
        heading.endMs().isPresent()
            ? OptionalLong.empty()
            : OptionalLong.of(Math.max(0, clockMs - grewAtMs)));
  }
}
