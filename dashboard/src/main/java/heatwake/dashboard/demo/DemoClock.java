package heatwake.dashboard.demo;

import heatwake.collector.recorder.RecorderClock;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The clock on the simulated site's wall, which the recorder goes by: a night passes on it in
 * seconds. Nobody sets it, so both of the recorder's clocks are the same.
 */
final class DemoClock implements RecorderClock {
  private final AtomicLong nowMs;

  DemoClock(long startMs) {
    nowMs = new AtomicLong(startMs);
  }

  /** Moves on; never back. */
  void reach(long timeMs) {
    nowMs.accumulateAndGet(timeMs, Math::max);
  }

  @Override
  public long wallMs() {
    return nowMs.get();
  }

  @Override
  public long monotonicNs() {
    return nowMs.get() * 1_000_000;
  }
}
