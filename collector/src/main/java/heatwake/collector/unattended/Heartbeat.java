package heatwake.collector.unattended;

import heatwake.collector.recorder.Recorder;
import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells systemd's watchdog that the recorder lives, through its own helper {@code systemd-notify}:
 * Java has no datagram sockets of the kind that systemd listens on. Beats only while the writer
 * thread works; a database that cannot be written is no reason to be restarted.
 */
final class Heartbeat {
  private static final Logger LOG = LoggerFactory.getLogger(Heartbeat.class);
  private static final Duration WRITER_STUCK = Duration.ofSeconds(60);

  private final Duration interval;
  private long lastNs;

  private Heartbeat(Duration interval) {
    this.interval = interval;
    this.lastNs = System.nanoTime() - interval.toNanos();
  }

  /** The heartbeat that the service manager asks for, if it does. */
  static Optional<Heartbeat> asked() {
    String micros = System.getenv("WATCHDOG_USEC");
    if (System.getenv("NOTIFY_SOCKET") == null || micros == null || !micros.matches("\\d{1,15}")) {
      return Optional.empty();
    }
    return Optional.of(new Heartbeat(Duration.ofNanos(Long.parseLong(micros) * 1000 / 3)));
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
    try {
      Process helper =
          new ProcessBuilder("systemd-notify", "WATCHDOG=1")
              .redirectErrorStream(true)
              .redirectOutput(Redirect.DISCARD)
              .start();
      helper.waitFor(interval.toMillis(), TimeUnit.MILLISECONDS);
    } catch (IOException e) {
      LOG.warn("systemd-notify could not be run: {}", e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
