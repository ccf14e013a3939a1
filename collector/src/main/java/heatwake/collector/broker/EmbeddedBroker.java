package heatwake.collector.broker;

import heatwake.analysis.series.EventKind;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Intake;
import heatwake.collector.rig.RigFile;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An MQTT 3.1.1 broker in this process. It keeps sessions and retained messages as long as it runs,
 * and nothing on disk.
 */
public final class EmbeddedBroker implements AutoCloseable {
  /** Subject of the broker's events. */
  public static final String SUBJECT = "broker";

  private static final Logger LOG = LoggerFactory.getLogger(EmbeddedBroker.class);

  private static final int ATTEMPTS_AT_A_FREE_PORT = 10;
  private static final Set<String> ALL_ADDRESSES = Set.of("0.0.0.0", "::");

  /** Between attempts to listen again, and between looks whether our sources are back. */
  private static final long AGAIN_MS = 100;

  private final BrokerConfig config;
  private final BrokerLog log = new BrokerLog();
  private final RefusedClients refused = new RefusedClients();
  private final List<Intake> told = new CopyOnWriteArrayList<>();
  private final int port;
  private volatile ListeningServer listening;
  private volatile boolean closed;

  private final BrokerEvents events =
      new BrokerEvents() {
        @Override
        public void refused(String client, String reason) {
          refused.add(client, reason, System.currentTimeMillis());
          happened(EventKind.CLIENT_REFUSED, client + ": " + reason);
        }

        @Override
        public void flooded(String what) {
          log.tell(what);
          happened(EventKind.FLOODING, what);
        }

        @Override
        public void failed(String what) {
          happened(EventKind.SOURCE_LOST, what);
        }
      };

  private EmbeddedBroker(BrokerConfig config, int port) {
    this.config = config;
    this.port = port;
  }

  /**
   * Starts a broker; when this returns it listens.
   *
   * @throws MistakeException if the port is taken
   */
  public static EmbeddedBroker start(BrokerConfig config) {
    return start(config, Admission.ofAll());
  }

  /**
   * Starts a broker that listens, but lets only some clients in until {@link #letAllIn}; the others
   * wait for their answer. Nobody is refused before then either.
   *
   * @param first ids of those clients
   * @throws MistakeException if the port is taken
   */
  public static EmbeddedBroker startFor(Set<String> first, BrokerConfig config) {
    return start(config, Admission.firstOf(first));
  }

  private static EmbeddedBroker start(BrokerConfig config, Admission admission) {
    if (config.port() > 0) {
      return start(config, config.port(), admission);
    }
    // Moquette learns late, and unsafely, which free port it was given: choose one for it.
    for (int attempt = 1; attempt < ATTEMPTS_AT_A_FREE_PORT; attempt++) {
      try {
        return start(config, freePort(config.address()), admission);
      } catch (MistakeException takenMeanwhile) {
        // Somebody was faster: the next round takes another.
      }
    }
    return start(config, freePort(config.address()), admission);
  }

  private static int freePort(String address) {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByName(address))) {
      return socket.getLocalPort();
    } catch (IOException fault) {
      throw new MistakeException("--broker-listen " + address + ": cannot listen there", fault);
    }
  }

  private static EmbeddedBroker start(BrokerConfig config, int port, Admission admission) {
    EmbeddedBroker broker = new EmbeddedBroker(config, port);
    broker.listening = ListeningServer.start(config, port, admission, broker::startAgainLater);
    return broker;
  }

  /** The port it listens on. */
  public int port() {
    return port;
  }

  /**
   * Its address for a source on this machine, {@code mqtt://127.0.0.1:1883}. A broker that listens
   * on all addresses is reached on loopback.
   */
  public String url() {
    String host =
        ALL_ADDRESSES.contains(config.address()) ? BrokerConfig.LOOPBACK : config.address();
    return "mqtt://" + host + ":" + port;
  }

  /** The server of the moment. */
  ListeningServer listening() {
    return listening;
  }

  /** The recorder is ready: everybody may come in. */
  public void letAllIn() {
    listening.watch().letAllIn();
  }

  /** Who was not let in since {@link #reportTo}, and how often. */
  public List<RefusedClient> refused() {
    return refused.all();
  }

  /**
   * Those of some rigs whose sources read from it, whose runs are to be told of its clients; all if
   * none does.
   */
  public List<RigFile> served(Collection<RigFile> rigs) {
    return ServedRigs.among(rigs, port);
  }

  /** From now on, tells of refused and flooding clients, this one besides those told already. */
  public void reportTo(Intake intake) {
    told.add(intake);
    listening.watch().reportTo(events);
  }

  /**
   * The intake to give to our own sources in place of another, so that what a probe sends once more
   * to the next recorder, because its acknowledgement was lost with this one, is not stored twice.
   * It serves sources that read from other brokers as the other does.
   */
  public Intake knowingSenders(Intake intake) {
    return new SenderMarks(
        intake,
        (client, packetId, digest) ->
            listening.watch().transit().handover(client, packetId, digest));
  }

  private void happened(EventKind kind, String what) {
    told.forEach(intake -> intake.happened(kind, SUBJECT, what));
  }

  /**
   * Takes nothing more from probes, which keep what has not been acknowledged to them, and waits
   * until what it has taken is on disk and acknowledged. To be called before our own sources are
   * closed.
   *
   * @param patience how long to wait at most
   */
  public void takeNoMore(Duration patience) {
    try {
      int left = listening.watch().transit().close(patience);
      if (left > 0) {
        LOG.error(
            "stopping although {} messages of probes are not stored; the probes still have them",
            left);
      }
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }

  /** The thread that tells of it is one of the server's. */
  private void startAgainLater() {
    Thread thread = new Thread(this::startAgain, "broker-again");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Starts a server in the place of one that no longer serves all its clients. What that one had in
   * memory was not acknowledged to probes, which send it again. As at the beginning, they wait for
   * their answer until our own sources have subscribed.
   */
  private synchronized void startAgain() {
    ListeningServer old = listening;
    if (closed) {
      return;
    }
    Set<String> readers = old.watch().transit().readers();
    old.stop();
    try {
      while (!closed) {
        try {
          listening =
              ListeningServer.start(
                  config, port, Admission.firstOf(readers), this::startAgainLater);
          break;
        } catch (MistakeException notFreeYet) {
          Thread.sleep(AGAIN_MS);
        }
      }
      listening.watch().reportTo(events);
      while (!closed && !listening.watch().transit().readers().containsAll(readers)) {
        Thread.sleep(AGAIN_MS);
      }
      listening.watch().letAllIn();
      LOG.warn("the broker inside stumbled and was started again; probes connect to it anew");
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    closed = true;
    synchronized (this) {
      listening.stop();
    }
  }
}
