package heatwake.collector.broker;

import heatwake.analysis.series.EventKind;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Intake;
import heatwake.collector.rig.RigFile;
import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Properties;
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

  /** Commands a client may pile up before the broker drops them. */
  private static final int COMMANDS_QUEUED = 16_384;

  private final Server server;
  private final BrokerWatch watch;
  private final BrokerLog log = new BrokerLog();
  private final RefusedClients refused = new RefusedClients();
  private final List<Intake> told = new CopyOnWriteArrayList<>();
  private final String address;
  private final int port;

  private EmbeddedBroker(Server server, BrokerWatch watch, String address, int port) {
    this.server = server;
    this.watch = watch;
    this.address = address;
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
    Properties properties = new Properties();
    properties.setProperty(IConfig.HOST_PROPERTY_NAME, config.address());
    properties.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
    properties.setProperty(
        IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, Boolean.toString(config.users().isEmpty()));
    properties.setProperty(BrokerConstants.ALLOW_ZERO_BYTE_CLIENT_ID_PROPERTY_NAME, "true");
    properties.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
    properties.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
    properties.setProperty(
        IConfig.NETTY_MAX_BYTES_PROPERTY_NAME,
        Integer.toString(config.limits().longestPacketBytes()));
    // At once: waiting to fill a buffer would hold readings back.
    properties.setProperty(IConfig.BUFFER_FLUSH_MS_PROPERTY_NAME, "0");
    properties.setProperty(IConfig.SESSION_QUEUE_SIZE, Integer.toString(COMMANDS_QUEUED));
    MemoryConfig settings = new MemoryConfig(properties);

    BrokerWatch watch = new BrokerWatch(config.users(), config.limits(), admission);
    if (!BrokerConnections.watch(port, watch)) {
      throw portTaken(config.address(), port, null);
    }
    Server server = new Server();
    try {
      server.startServer(settings, List.of(watch), null, watch, watch);
    } catch (IOException | RuntimeException fault) {
      BrokerConnections.forget(port, watch);
      throw portTaken(config.address(), port, fault);
    }
    watch.disconnectBy(server::disconnectClient);
    return new EmbeddedBroker(server, watch, config.address(), port);
  }

  private static MistakeException portTaken(String address, int port, Throwable fault) {
    return new MistakeException(
        "--broker: cannot listen on "
            + address
            + " port "
            + port
            + "; another program may have it: choose another with --broker=PORT",
        fault);
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
    String host = ALL_ADDRESSES.contains(address) ? BrokerConfig.LOOPBACK : address;
    return "mqtt://" + host + ":" + port;
  }

  /** The recorder is ready: everybody may come in. */
  public void letAllIn() {
    watch.letAllIn();
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
    watch.reportTo(
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
        });
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
      int left = watch.transit().close(patience);
      if (left > 0) {
        LOG.error(
            "stopping although {} messages of probes are not stored; the probes still have them",
            left);
      }
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    server.stopServer();
    BrokerConnections.forget(port, watch);
  }
}
