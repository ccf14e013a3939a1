package heatwake.collector.modbus;

import heatwake.collector.probe.Backoff;
import java.time.Duration;

/**
 * Whether a unit answers. One that does not is asked less and less often, and never twice in a row,
 * so that it takes no time from the others.
 */
final class UnitHealth {
  private final Backoff backoff = new Backoff(Duration.ofSeconds(2), Duration.ofMinutes(1));
  private boolean silent;
  private long notBeforeNanos;

  boolean isSilent() {
    return silent;
  }

  /** Whether it may be asked now. */
  boolean mayBeAsked(long nowNanos) {
    return !silent || nowNanos - notBeforeNanos >= 0;
  }

  void answered() {
    silent = false;
    backoff.reset();
  }

  void failed(long nowNanos) {
    silent = true;
    notBeforeNanos = nowNanos + backoff.next().toNanos();
  }
}
