package heatwake.collector.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.internal.NetworkModule;
import org.eclipse.paho.mqttv5.client.spi.NetworkModuleFactory;

/** Puts our socket beneath the MQTT 5 client for {@code mqtt} and {@code mqtts} addresses. */
public final class Mqtt5Transport implements NetworkModuleFactory {
  /**
   * Options whose connection notes which messages are marked as duplicates, in the order in which
   * they come: the client library (1.2.5) drops the mark on its way to the callback.
   */
  static final class Witnessed extends MqttConnectionOptions implements PacketLimitStream.Witness {
    private final Queue<Boolean> marks = new ConcurrentLinkedQueue<>();

    @Override
    public void publish(boolean duplicate) {
      marks.add(duplicate);
    }

    /** Whether the next message is marked. */
    boolean nextIsDuplicate() {
      return Boolean.TRUE.equals(marks.poll());
    }
  }

  @Override
  public Set<String> getSupportedUriSchemes() {
    return Set.of("mqtt", "mqtts");
  }

  @Override
  public void validateURI(URI uri) {
    if (uri.getHost() == null) {
      throw new IllegalArgumentException("no host in " + uri);
    }
  }

  @Override
  public NetworkModule createNetworkModule(
      URI uri, MqttConnectionOptions options, String clientId) {
    BrokerSocket socket =
        new BrokerSocket(
            uri,
            options.getSocketFactory(),
            options.getConnectionTimeout() * 1000,
            options instanceof Witnessed witnessed ? witnessed : duplicate -> {});
    return new NetworkModule() {
      @Override
      public void start() throws IOException {
        socket.open();
      }

      @Override
      public InputStream getInputStream() {
        return socket.input();
      }

      @Override
      public OutputStream getOutputStream() throws IOException {
        return socket.output();
      }

      @Override
      public void stop() throws IOException {
        socket.close();
      }

      @Override
      public String getServerURI() {
        return uri.toString();
      }
    };
  }
}
