package heatwake.collector.csv;

import heatwake.collector.clock.ClockStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The run's time of each row. It never runs backwards: where the logger's clock was set back, the
 * run keeps its own time, which from there on is ahead of the clock by that much, until the clock
 * is set forward again by as much. So nothing is lost and nothing recorded twice, as with a
 * recorder that sees its clock set.
 *
 * <p>A clock that was set back goes on from there; a row that is out of place does not. What comes
 * after a row tells the two apart.
 */
final class RowClock {
  /** A logger's clock is set a few times at most; more is a file out of order; ours. */
  private static final int MOST_STEPS = 5;

  /** Set forward again by as much as it was set back, but for this many intervals; ours. */
  private static final int INTERVALS = 2;

  private final List<ClockStep> steps = new ArrayList<>();
  private long clockMs;
  private long intervalMs;
  private long lastPassedMs;
  private long aheadMs;

  RowClock(long firstMs) {
    this.clockMs = firstMs;
  }

  /**
   * The run's time of a row.
   *
   * @param timeMs what the row says
   * @param nextMs what the next one says, if there is one
   * @return empty if the row is out of place
   */
  Optional<Long> runMs(long timeMs, Optional<Long> nextMs) {
    long passedMs = timeMs - clockMs;
    if (passedMs < 0) {
      if (nextMs.filter(next -> goesOnFrom(timeMs, next)).isEmpty() || steps.size() == MOST_STEPS) {
        return Optional.empty();
      }
      step(timeMs, passedMs - intervalMs);
    } else if (aheadMs > 0 && Math.abs(passedMs - aheadMs) <= INTERVALS * intervalMs) {
      step(timeMs, aheadMs);
    } else if (passedMs > 0) {
      // The shorter of the last two: one gap is not the pace.
      intervalMs = lastPassedMs == 0 ? passedMs : Math.min(passedMs, lastPassedMs);
      lastPassedMs = passedMs;
    }
    clockMs = timeMs;
    return Optional.of(timeMs + aheadMs);
  }

  /** Whether the next row goes on from this one rather than from the one before. */
  private boolean goesOnFrom(long timeMs, long nextMs) {
    return nextMs >= timeMs
        && Math.abs(nextMs - timeMs - intervalMs) < Math.abs(nextMs - clockMs - intervalMs);
  }

  private void step(long timeMs, long byMs) {
    long beforeMs = clockMs + aheadMs;
    long wantedMs = Math.max(0, aheadMs - byMs);
    // The moment before is not gone back behind.
    aheadMs = Math.max(wantedMs, beforeMs - timeMs);
    steps.add(new ClockStep(timeMs + aheadMs, byMs, aheadMs));
  }

  /** The jumps seen so far. */
  List<ClockStep> steps() {
    return List.copyOf(steps);
  }
}
