package heatwake.collector.unattended;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the service manager how the recorder fares, as sd_notify(3) has it, through systemd's own
 * helper {@code systemd-notify}: Java has no datagram sockets of the kind that systemd listens on.
 */
public final class ServiceManager {
  private static final Logger LOG = LoggerFactory.getLogger(ServiceManager.class);
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private ServiceManager() {}

  /** The service manager that started this process and wants to be told, if one did. */
  public static Optional<ServiceManager> asked() {
    return System.getenv("NOTIFY_SOCKET") == null
        ? Optional.empty()
        : Optional.of(new ServiceManager());
  }

  /** Every run has begun, and every source is open or being retried. */
  public void ready() {
    tell("READY=1", PATIENCE);
  }

  /** The recorder was asked to stop and stores what is left. */
  public void stopping() {
    tell("STOPPING=1", PATIENCE);
  }

  /** The recorder lives. */
  void alive(Duration patience) {
    tell("WATCHDOG=1", patience);
  }

  private static void tell(String what, Duration patience) {
    try {
      Process helper =
          new ProcessBuilder("systemd-notify", what)
              .redirectErrorStream(true)
              .redirectOutput(Redirect.DISCARD)
              .start();
      helper.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (IOException e) {
      LOG.warn("systemd-notify could not be run: {}", e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
