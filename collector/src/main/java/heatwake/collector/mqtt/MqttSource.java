package heatwake.collector.mqtt;

import heatwake.analysis.series.EventKind;
import heatwake.collector.frame.Excerpt;
import heatwake.collector.frame.Payload;
import heatwake.collector.probe.Backoff;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.probe.ProbeTap;
import heatwake.collector.probe.Reading;
import heatwake.collector.probe.ReadingMaker;
import heatwake.collector.rig.ProbeSpec;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * Readings from an MQTT broker, in a session that the broker keeps while we are away. A message is
 * acknowledged when its readings are on disk, or when it is known that it holds none.
 */
final class MqttSource implements ProbeSource, BrokerLink.Listener {
  /** Longer payloads hold no reading. */
  static final int LONGEST_PAYLOAD = 64 * 1024;

  private static final long LAST_COMMIT_TIMEOUT_MS = 3000;
  private static final int GREETINGS = 3;
  private static final long GREETING_PAUSE_MS = 100;

  /** Makes a connection object for one attempt. */
  interface Dialler {
    BrokerLink dial(BrokerLink.Listener listener) throws BrokerException;
  }

  private final String name;
  private final String session;
  private final Dialler dialler;
  private final TopicTaps taps;
  private final DeliveryLedger ledger;
  private final Backoff whenUnreachable =
      new Backoff(Duration.ofMillis(500), Duration.ofSeconds(15));
  private final Backoff whenRefused = new Backoff(Duration.ofSeconds(15), Duration.ofMinutes(5));
  private final CountDownLatch firstAttempt = new CountDownLatch(1);
  private final Thread thread;

  private Intake intake;
  private ReadingMaker readings;
  private volatile boolean closing;

  /** Connected, but not subscribed yet. For the connecting thread alone. */
  private boolean inGreeting;

  private int greetingsLeft = GREETINGS;

  /** Guarded by this. */
  private BrokerLink current;

  /** Why the current connection broke; null while it stands. Guarded by this. */
  private String lostBecause;

  /**
   * A source, not yet started.
   *
   * @param session what the broker keeps for us
   */
  MqttSource(String name, String session, List<ProbeSpec> probes, Dialler dialler) {
    this.name = name;
    this.session = session;
    this.ledger = new DeliveryLedger(session);
    this.dialler = dialler;
    this.taps = new TopicTaps(probes);
    this.thread = new Thread(this::stayConnected, "mqtt-" + name);
    thread.setDaemon(true);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public void start(Intake target) throws InterruptedException {
    intake = target;
    readings = new ReadingMaker(target);
    ledger.remember(target.delivered(session));
    thread.start();
    firstAttempt.await();
  }

  private void stayConnected() {
    try {
      while (!closing) {
        try {
          BrokerLink link = dialler.dial(this);
          try {
            converse(link);
          } finally {
            link.close();
          }
        } catch (BrokerException fault) {
          if (!closing) {
            lost(fault);
          }
        }
      }
    } catch (InterruptedException stop) {
      // Closing.
    } finally {
      firstAttempt.countDown();
    }
  }

  private void lost(BrokerException fault) throws InterruptedException {
    if (inGreeting && !fault.isRefusal() && greetingsLeft-- > 0) {
      // Some brokers hang up on a client that subscribes at once; that is not worth an event.
      Thread.sleep(GREETING_PAUSE_MS);
      return;
    }
    intake.began(EventKind.SOURCE_LOST, name, fault.getMessage());
    firstAttempt.countDown();
    Thread.sleep((fault.isRefusal() ? whenRefused : whenUnreachable).next().toMillis());
  }

  private void converse(BrokerLink link) throws BrokerException, InterruptedException {
    synchronized (this) {
      current = link;
      lostBecause = null;
    }
    inGreeting = false;
    boolean resumed = link.connect();
    if (!resumed && ledger.forget()) {
      // Before the subscription, so before anything can come under an identifier that is known.
      intake.sessionIsNew(session);
    }
    inGreeting = true;
    link.subscribe(taps.filters());
    inGreeting = false;
    greetingsLeft = GREETINGS;
    intake.ended(EventKind.SOURCE_LOST, name);
    whenUnreachable.reset();
    whenRefused.reset();
    firstAttempt.countDown();
    synchronized (this) {
      while (lostBecause == null) {
        wait();
      }
      throw BrokerException.unreachable(lostBecause);
    }
  }

  @Override
  public synchronized void lost(BrokerLink link, String why) {
    if (link == current) {
      lostBecause = why;
      notifyAll();
    }
  }

  @Override
  public void arrived(BrokerLink link, ArrivedMessage message) throws InterruptedException {
    if (closing) {
      // Left unacknowledged, so the broker keeps it for the next start.
      return;
    }
    if (!message.wantsAcknowledgement()) {
      List<Reading> got = read(message);
      if (!got.isEmpty()) {
        intake.deliver(Delivery.of(got));
      }
      return;
    }
    DeliveryLedger.Entry entry = ledger.arrived(link, message);
    if (entry != null) {
      // Also without a reading: acknowledgements are owed in the order of arrival.
      intake.deliver(new Delivery(read(message), entry::settle, Optional.of(entry.mark())));
    }
  }

  private List<Reading> read(ArrivedMessage message) {
    List<ProbeTap> fed = taps.of(message.topic());
    if (fed.isEmpty()) {
      // Left over in the session from an earlier rig.
      return List.of();
    }
    Optional<Payload> payload =
        message.payload().length > LONGEST_PAYLOAD
            ? Optional.empty()
            : Payload.decode(message.payload());
    if (payload.isEmpty()) {
      unreadable(message, reason(message));
      return List.of();
    }
    List<Reading> got = readings.from(payload.get(), fed, age(message));
    if (got.isEmpty()
        && fed.stream().noneMatch(tap -> payload.get().field(tap.field()).isPresent())) {
      unreadable(message, "holds no " + fed.get(0).field());
    }
    return got;
  }

  private ReadingMaker.Age age(ArrivedMessage message) {
    return message.retained()
        ? new ReadingMaker.Age.Unknown()
        : new ReadingMaker.Age.Fresh(intake.nowMs());
  }

  private static String reason(ArrivedMessage message) {
    return message.payload().length > LONGEST_PAYLOAD
        ? "is longer than " + LONGEST_PAYLOAD / 1024 + " kB"
        : "is not UTF-8 text";
  }

  private void unreadable(ArrivedMessage message, String reason) {
    intake.happened(
        EventKind.UNREADABLE,
        name,
        "message on "
            + Excerpt.of(message.topic())
            + " "
            + reason
            + ": "
            + Excerpt.of(message.payload()));
  }

  @Override
  public void close() {
    closing = true;
    try {
      ledger.close(LAST_COMMIT_TIMEOUT_MS);
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
    thread.interrupt();
    try {
      thread.join(LAST_COMMIT_TIMEOUT_MS);
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }
}
