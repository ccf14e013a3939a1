package heatwake.collector.serial;

import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Backoff;
import heatwake.collector.probe.Intake;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * Holds on to a serial port on a thread of its own: opens it, lets somebody use it, and when it is
 * gone says so and opens it again wherever it turns up, for ever.
 */
public final class PortKeeper implements AutoCloseable {
  private static final long STOP_TIMEOUT_MS = 3000;

  /** Uses a port while it is open. */
  public interface Use {
    /** Returns when the port is gone or {@link PortKeeper#isClosing()} has become true. */
    void of(OpenPort port) throws InterruptedException;
  }

  private final String source;
  private final String named;
  private final LineSettings settings;
  private final PortFinder ports;
  private final Use use;
  private final Backoff backoff = new Backoff(Duration.ofMillis(250), Duration.ofSeconds(5));
  private final CountDownLatch firstAttempt = new CountDownLatch(1);
  private final Thread thread;

  private Intake intake;
  private Optional<UsbIdentity> lastSeen = Optional.empty();
  private volatile boolean closing;

  /**
   * @param source name of the source in the rig, the subject of events
   * @param named the port as the rig names it
   */
  public PortKeeper(String source, String named, LineSettings settings, PortFinder ports, Use use) {
    this.source = source;
    this.named = named;
    this.settings = settings;
    this.ports = ports;
    this.use = use;
    this.thread = new Thread(this::stayOpen, "port-" + source);
    thread.setDaemon(true);
  }

  /** Starts, and returns when the port is in use or a first attempt failed and was reported. */
  public void start(Intake target) throws InterruptedException {
    intake = target;
    OpenPort.beforeAllClose(this::close);
    thread.start();
    firstAttempt.await();
  }

  private void stayOpen() {
    try {
      while (!closing) {
        try {
          useOnce();
        } catch (PortException fault) {
          intake.began(EventKind.SOURCE_LOST, source, fault.getMessage());
          firstAttempt.countDown();
          Thread.sleep(backoff.next().toMillis());
        }
      }
    } catch (InterruptedException stop) {
      // Closing.
    } finally {
      firstAttempt.countDown();
    }
  }

  private void useOnce() throws PortException, InterruptedException {
    String path =
        ports
            .path(named, lastSeen)
            .orElseThrow(
                () -> new PortException(named + ": no such adapter, or more than one, is there"));
    try (OpenPort port = OpenPort.open(path, settings)) {
      lastSeen = port.usb().or(() -> lastSeen);
      use.of(port);
    }
    if (!closing) {
      throw new PortException(path + ": the port is gone; was the adapter unplugged?");
    }
  }

  /** The port works: whatever was wrong is over. */
  public void works() {
    intake.ended(EventKind.SOURCE_LOST, source);
    firstAttempt.countDown();
  }

  /** Something came over it: the next fault is a new one and is not waited out longer. */
  public void heard() {
    backoff.reset();
  }

  public boolean isClosing() {
    return closing;
  }

  @Override
  public void close() {
    closing = true;
    thread.interrupt();
    try {
      thread.join(STOP_TIMEOUT_MS);
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }
}
