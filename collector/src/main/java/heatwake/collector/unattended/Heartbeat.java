package heatwake.collector.unattended;

import heatwake.collector.recorder.Recorder;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the service manager's watchdog that the recorder lives. Beats only while the writer thread
 * works; a database that cannot be written is no reason to be restarted.
 */
final class Heartbeat {
  private static final Logger LOG = LoggerFactory.getLogger(Heartbeat.class);
  private static final Duration WRITER_STUCK = Duration.ofSeconds(60);

  private final ServiceManager manager;
  private final Duration interval;
  private long lastNs;

  private Heartbeat(ServiceManager manager, Duration interval) {
    this.manager = manager;
    this.interval = interval;
    this.lastNs = System.nanoTime() - interval.toNanos();
  }

  /** The heartbeat that the service manager asks for, if it does. */
  static Optional<Heartbeat> asked() {
    String micros = System.getenv("WATCHDOG_USEC");
    if (micros == null || !micros.matches("\\d{1,15}")) {
      return Optional.empty();
    }
    Duration interval = Duration.ofNanos(Long.parseLong(micros) * 1000 / 3);
    return ServiceManager.asked().map(manager -> new Heartbeat(manager, interval));
  }

  void beat(Recorder recorder) {
    long nowNs = System.nanoTime();
    if (nowNs - lastNs < interval.toNanos()) {
      return;
    }
    if (recorder.sinceWriterMoved().compareTo(WRITER_STUCK) > 0) {
      LOG.error("the writer has not moved for {} s", recorder.sinceWriterMoved().toSeconds());
      return;
    }
    lastNs = nowNs;
    manager.alive(interval);
  }
}
