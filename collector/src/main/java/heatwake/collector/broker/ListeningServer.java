package heatwake.collector.broker;

import heatwake.collector.mistake.MistakeException;
import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.util.List;
import java.util.Properties;

/**
 * The library's server while it listens, and what stands at its door. It begins with empty hands:
 * sessions, retained messages and what is under way are those of one server.
 */
final class ListeningServer {
  /** Commands a client may pile up before the broker drops them. */
  private static final int COMMANDS_QUEUED = 16_384;

  private final Server server = new Server();
  private final BrokerWatch watch;
  private final int port;

  private ListeningServer(BrokerWatch watch, int port) {
    this.watch = watch;
    this.port = port;
  }

  /**
   * Starts a server; when this returns it listens.
   *
   * @param stumbled what to do when it can no longer serve all its clients
   * @throws MistakeException if the port is taken
   */
  static ListeningServer start(
      BrokerConfig config, int port, Admission admission, Runnable stumbled) {
    BrokerWatch watch = new BrokerWatch(config.users(), config.limits(), admission, stumbled);
    if (!BrokerConnections.watch(port, watch)) {
      throw portTaken(config.address(), port, null);
    }
    ListeningServer listening = new ListeningServer(watch, port);
    try {
      listening.server.startServer(settings(config, port), List.of(watch), null, watch, watch);
    } catch (IOException | RuntimeException fault) {
      BrokerConnections.forget(port, watch);
      throw portTaken(config.address(), port, fault);
    }
    watch.disconnectBy(listening.server::disconnectClient);
    return listening;
  }

  private static MemoryConfig settings(BrokerConfig config, int port) {
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
    return new MemoryConfig(properties);
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

  BrokerWatch watch() {
    return watch;
  }

  void stop() {
    server.stopServer();
    BrokerConnections.forget(port, watch);
  }
}
