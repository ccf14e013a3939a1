package heatwake.collector.unattended;

import heatwake.analysis.finding.Flag;
import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks after a recorder that nobody looks at: writes its status every few seconds, and runs the
 * analysis on the runs so far to tell flags as they arise. The longer a look takes, the rarer it
 * is: it never takes more than a hundredth of the time.
 */
public final class Attendant implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Attendant.class);
  private static final long STATUS_S = 5;
  private static final long LOOK_AT_LEAST_EVERY_MS = 60_000;
  private static final int SHARE_OF_TIME = 100;

  private final Recorder recorder;
  private final Optional<EmbeddedBroker> broker;
  private final List<StatusOutlet> outlets;
  private final Store store;
  private final FlagWatch flags;
  private final Optional<Heartbeat> heartbeat = Heartbeat.asked();
  private final Map<Long, List<Flag>> shown = new ConcurrentHashMap<>();
  private final Thread status = new Thread(this::tellForever, "status");
  private final Thread looks = new Thread(this::lookForever, "flags");

  /**
   * An attendant of a recorder; call {@link #start}.
   *
   * @param outlets where the status goes
   * @param listener who is told of flags
   */
  public Attendant(Recorder recorder, List<StatusOutlet> outlets, FlagListener listener) {
    this(recorder, Optional.empty(), outlets, listener);
  }

  /**
   * An attendant of a recorder and of the broker that runs along with it.
   *
   * @param broker whose refused clients the status tells
   * @param outlets where the status goes
   * @param listener who is told of flags
   */
  public Attendant(
      Recorder recorder,
      Optional<EmbeddedBroker> broker,
      List<StatusOutlet> outlets,
      FlagListener listener) {
    this.recorder = recorder;
    this.broker = broker;
    this.outlets = List.copyOf(outlets);
    this.store = Store.openExisting(recorder.database());
    this.flags = new FlagWatch(store, listener);
    status.setDaemon(true);
    looks.setDaemon(true);
  }

  /** Begins to attend. */
  public void start() {
    status.start();
    looks.start();
  }

  private void tellForever() {
    try {
      while (true) {
        tell();
        TimeUnit.SECONDS.sleep(STATUS_S);
      }
    } catch (InterruptedException e) {
      // Closed.
      return;
    }
  }

  private void lookForever() {
    try {
      long pauseMs = LOOK_AT_LEAST_EVERY_MS;
      while (true) {
        TimeUnit.MILLISECONDS.sleep(pauseMs);
        long beganNs = System.nanoTime();
        look();
        long tookMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - beganNs);
        pauseMs = Math.max(LOOK_AT_LEAST_EVERY_MS, SHARE_OF_TIME * tookMs);
      }
    } catch (InterruptedException e) {
      // Closed.
      return;
    }
  }

  private void tell() {
    try {
      heartbeat.ifPresent(heart -> heart.beat(recorder));
      String json =
          StatusText.of(
              recorder,
              broker.map(EmbeddedBroker::refused),
              DiskForecast.freeBytesAt(recorder.database()),
              run -> shown.getOrDefault(run, List.of()),
              System.currentTimeMillis());
      for (StatusOutlet outlet : outlets) {
        outlet.put(json);
      }
    } catch (IOException | RuntimeException e) {
      LOG.warn("the status could not be told: {}", e.getMessage());
    }
  }

  private void look() {
    for (RecordedRun run : recorder.runs()) {
      long id = run.id();
      try {
        flags.look(run.rig().siteInLog(), id);
        shown.put(id, flags.flags(id));
      } catch (RuntimeException e) {
        LOG.warn("run {} could not be analysed: {}", id, e.getMessage());
      }
    }
  }

  @Override
  public void close() {
    looks.interrupt();
    status.interrupt();
    try {
      looks.join();
      status.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    outlets.forEach(StatusOutlet::close);
    store.close();
  }
}
