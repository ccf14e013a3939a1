package heatwake.collector.recorder;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** Clocks that a test moves. */
final class SettableClock implements RecorderClock {
  private final AtomicLong wallMs;
  private final AtomicLong monotonicNs = new AtomicLong(1);

  SettableClock(long wallMs) {
    this.wallMs = new AtomicLong(wallMs);
  }

  @Override
  public long wallMs() {
    return wallMs.get();
  }

  @Override
  public long monotonicNs() {
    return monotonicNs.get();
  }

  /** Time passes. */
  void passMs(long ms) {
    monotonicNs.addAndGet(TimeUnit.MILLISECONDS.toNanos(ms));
    wallMs.addAndGet(ms);
  }

  /** Somebody sets the clock. */
  void stepMs(long ms) {
    wallMs.addAndGet(ms);
  }
}
