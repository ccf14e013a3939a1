package heatwake.collector.recorder;

import heatwake.collector.clock.ClockStep;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The time by which arriving readings are stamped. It follows the machine's clock but never runs
 * backwards:
 *
 * <ul>
 *   <li>set forward, the clock is followed: the run has a gap of that size;
 *   <li>set back, the run keeps its own time, which from then on is ahead of the clock by that
 *       much, until the clock is set forward again or a new recorder starts.
 * </ul>
 *
 * Either way the step is reported with its size. What is smaller than the least step is a clock
 * being disciplined, and is followed.
 */
final class RunTime {
  /** Least jump between the two clocks that is a step. */
  private static final long LEAST_STEP_MS = 500;

  /** Longest time between two looks at the clocks for them to count as one. */
  private static final long SAME_MOMENT_NS = TimeUnit.MILLISECONDS.toNanos(20);

  private static final int TRIES = 5;

  private final RecorderClock clock;
  private final List<ClockStep> unreported = new ArrayList<>();
  private long wallMs;
  private long monotonicNs;
  private long aheadMs;
  private long latestMs;

  RunTime(RecorderClock clock) {
    this.clock = clock;
    look();
    latestMs = wallMs;
  }

  /** The present moment, UTC milliseconds; never less than one given before. */
  synchronized long nowMs() {
    long wallBeforeMs = wallMs;
    long monotonicBeforeNs = monotonicNs;
    look();
    long passedMs = TimeUnit.NANOSECONDS.toMillis(monotonicNs - monotonicBeforeNs);
    long stepMs = wallMs - wallBeforeMs - passedMs;
    if (Math.abs(stepMs) >= LEAST_STEP_MS) {
      aheadMs = Math.max(0, aheadMs - stepMs);
      unreported.add(new ClockStep(wallMs + aheadMs, stepMs, aheadMs));
    }
    latestMs = Math.max(latestMs, wallMs + aheadMs);
    return latestMs;
  }

  /** Steps seen since the last call. */
  synchronized List<ClockStep> takeSteps() {
    List<ClockStep> steps = List.copyOf(unreported);
    unreported.clear();
    return steps;
  }

  /** Reads both clocks as nearly at one moment as the machine allows. */
  private void look() {
    for (int i = 0; i < TRIES; i++) {
      long beforeNs = clock.monotonicNs();
      wallMs = clock.wallMs();
      monotonicNs = clock.monotonicNs();
      if (monotonicNs - beforeNs < SAME_MOMENT_NS) {
        return;
      }
    }
  }
}
