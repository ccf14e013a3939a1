package heatwake.collector.broker;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the log what the broker would not let clients do, at most one line a minute and how many
 * more there were: a client that tries again and again does not fill a disk. All are counted as
 * events.
 */
final class BrokerLog {
  private static final Logger LOG = LoggerFactory.getLogger(BrokerLog.class);
  private static final long QUIET_NANOS = 60_000_000_000L;

  private boolean told;
  private long toldAtNanos;
  private long untold;

  synchronized void tell(String what) {
    long now = System.nanoTime();
    if (told && now - toldAtNanos < QUIET_NANOS) {
      untold++;
      return;
    }
    if (untold > 0) {
      LOG.warn("broker: {}; {} more like it since the last line", what, untold);
    } else {
      LOG.warn("broker: {}", what);
    }
    told = true;
    toldAtNanos = now;
    untold = 0;
  }
}
