package heatwake.collector.broker;

import heatwake.analysis.series.EventKind;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Intake;
import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.util.List;
import java.util.Properties;

/**
 * An MQTT 3.1.1 broker in this process. It keeps sessions and retained messages as long as it runs,
 * and nothing on disk.
 */
public final class EmbeddedBroker implements AutoCloseable {
  /** Subject of the broker's events. */
  public static final String SUBJECT = "broker";

  /** Commands a client may pile up before the broker drops them. */
  private static final int COMMANDS_QUEUED = 16_384;

  private final Server server;
  private final BrokerWatch watch;
  private final String address;

  private EmbeddedBroker(Server server, BrokerWatch watch, String address) {
    this.server = server;
    this.watch = watch;
    this.address = address;
  }

  /**
   * Starts a broker; when this returns it listens.
   *
   * @throws MistakeException if the port is taken
   */
  public static EmbeddedBroker start(BrokerConfig config) {
    Properties properties = new Properties();
    properties.setProperty(IConfig.HOST_PROPERTY_NAME, config.address());
    properties.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(config.port()));
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

    BrokerWatch watch = new BrokerWatch(config.users(), config.limits());
    Server server = new Server();
    try {
      server.startServer(settings, List.of(watch), null, watch, watch);
    } catch (IOException | RuntimeException fault) {
      throw new MistakeException(
          "--broker: cannot listen on "
              + config.address()
              + " port "
              + config.port()
              + "; another program may have it: choose another with --broker=PORT",
          fault);
    }
    watch.disconnectBy(server::disconnectClient);
    return new EmbeddedBroker(server, watch, config.address());
  }

  /** The port it listens on. */
  public int port() {
    return server.getPort();
  }

  /** Its address for a source in a rig, {@code mqtt://127.0.0.1:1883}. */
  public String url() {
    return "mqtt://" + address + ":" + port();
  }

  /** From now on, tells of refused and flooding clients. */
  public void reportTo(Intake intake) {
    watch.reportTo(
        new BrokerEvents() {
          @Override
          public void refused(String what) {
            intake.happened(EventKind.CLIENT_REFUSED, SUBJECT, what);
          }

          @Override
          public void flooded(String what) {
            intake.happened(EventKind.FLOODING, SUBJECT, what);
          }

          @Override
          public void failed(String what) {
            intake.happened(EventKind.SOURCE_LOST, SUBJECT, what);
          }
        });
  }

  @Override
  public void close() {
    server.stopServer();
  }
}
