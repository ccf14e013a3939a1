package heatwake.collector.csv;

import heatwake.collector.clock.ClockStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The run's time of each row. It never runs backwards: where the logger's clock was set back, the
 * run keeps its own time, which from there on is ahead of the clock by that much, until the clock
 * is set forward again by as much. So nothing is lost and nothing recorded twice, as with a
 * recorder that sees its clock set.
 *
 * <p>A clock that was set back goes on from there; a row that is out of place does not. What comes
 * after a row tells the two apart: also where a row leaps by more than a day and the rows soon come
 * back. That is a stray, which bears a wrong stamp of its own, and not a clock that was set twice.
 */
final class RowClock {
  /** Within so many rows after a stray the rows come back from it; ours. */
  static final int ROWS_TO_COME_BACK = 5;

  /** A logger's clock is set a few times at most; more is a file out of order; ours. */
  private static final int MOST_STEPS = 5;

  /** Set forward again by as much as it was set back, but for this many intervals; ours. */
  private static final int INTERVALS = 2;

  /**
   * A leap further than this, either way, may be a stray; as for the stamps of recorded probes,
   * because clocks are set wrong by hours and time zones.
   */
  private static final long LEAP_MS = TimeUnit.DAYS.toMillis(1);

  /** A last row further ahead than so many of the longest gaps before it is a stray; ours. */
  private static final int LONGEST_GAPS = 2;

  private final List<ClockStep> steps = new ArrayList<>();
  private long clockMs;
  private long intervalMs;
  private long lastPassedMs;
  private long aheadMs;
  private long longestGapMs;
  private int rows;

  RowClock(long firstMs) {
    this.clockMs = firstMs;
  }

  /** What the logger's clock said at the row before, UTC milliseconds. */
  long clockMs() {
    return clockMs;
  }

  /**
   * Whether the first row of a file is a stray: it lies more than a day after all that follow at
   * once. A clock so far ahead that was set after a single row comes to the same.
   *
   * @param following what the next rows say, as many as there are up to {@link #ROWS_TO_COME_BACK}
   */
  static boolean isFirstStray(long timeMs, List<Long> following) {
    return following.size() > 1 && following.stream().allMatch(next -> timeMs - next > LEAP_MS);
  }

  /**
   * Whether a row is a stray: it leaps, and one soon after it goes on from the row before. So is
   * the last row of a file if it leaps back, for no row says that the clock went on from there, or
   * if it leaps forward by far more than any row before it. It may then be a true one after a gap
   * such as the file has not had; but nothing can be told from one row alone, while a run that goes
   * on to a wrong stamp has days without readings.
   *
   * @param following what the next rows say, as many as there are up to {@link #ROWS_TO_COME_BACK}
   */
  boolean isStray(long timeMs, List<Long> following) {
    if (following.isEmpty()) {
      return clockMs - timeMs > LEAP_MS || isFarAhead(timeMs - clockMs);
    }
    return Math.abs(timeMs - clockMs) > LEAP_MS
        && following.stream().anyMatch(next -> next >= clockMs && next - clockMs <= LEAP_MS);
  }

  private boolean isFarAhead(long passedMs) {
    boolean paceIsKnown = rows > ROWS_TO_COME_BACK;
    return paceIsKnown
        && passedMs > Math.max(LEAP_MS, LONGEST_GAPS * longestGapMs)
        && !isSetForwardAgain(passedMs);
  }

  private boolean isSetForwardAgain(long passedMs) {
    return aheadMs > 0 && Math.abs(passedMs - aheadMs) <= INTERVALS * intervalMs;
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
    } else if (isSetForwardAgain(passedMs)) {
      step(timeMs, aheadMs);
    } else if (passedMs > 0) {
      // The shorter of the last two: one gap is not the pace.
      intervalMs = lastPassedMs == 0 ? passedMs : Math.min(passedMs, lastPassedMs);
      lastPassedMs = passedMs;
      longestGapMs = Math.max(longestGapMs, passedMs);
    }
    rows++;
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
    // Two rows are two moments, or what they read of one channel would contradict each other.
    aheadMs = Math.max(wantedMs, beforeMs + 1 - timeMs);
    steps.add(new ClockStep(timeMs + aheadMs, byMs, aheadMs));
  }

  /** The jumps seen so far. */
  List<ClockStep> steps() {
    return List.copyOf(steps);
  }
}
