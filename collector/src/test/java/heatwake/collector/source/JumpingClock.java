package heatwake.collector.source;

import heatwake.collector.recorder.RecorderClock;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** The machine's clocks, but an hour can pass in no time. */
final class JumpingClock implements RecorderClock {
  private final AtomicLong passedMs = new AtomicLong();

  @Override
  public long wallMs() {
    return System.currentTimeMillis() + passedMs.get();
  }

  @Override
  public long monotonicNs() {
    return System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(passedMs.get());
  }

  void pass(long time, TimeUnit unit) {
    passedMs.addAndGet(unit.toMillis(time));
  }
}
