package heatwake.collector.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Set;
import javax.net.SocketFactory;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;

/**
 * Puts our socket beneath the MQTT clients for {@code mqtt} and {@code mqtts} addresses. Both
 * libraries find it as a service; their interfaces differ in name alone.
 */
public final class MqttTransport
    implements org.eclipse.paho.client.mqttv3.spi.NetworkModuleFactory,
        org.eclipse.paho.mqttv5.client.spi.NetworkModuleFactory {
  private static final PacketLimitStream.Witness NOBODY = duplicate -> {};

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
  public Connection createNetworkModule(URI uri, MqttConnectOptions options, String clientId) {
    return new Connection(uri, options.getSocketFactory(), options.getConnectionTimeout(), NOBODY);
  }

  @Override
  public Connection createNetworkModule(URI uri, MqttConnectionOptions options, String clientId) {
    return new Connection(
        uri,
        options.getSocketFactory(),
        options.getConnectionTimeout(),
        options instanceof WitnessedOptions witnessed ? witnessed : NOBODY);
  }

  /** Our socket, as both libraries want to see one. */
  static final class Connection
      implements org.eclipse.paho.client.mqttv3.internal.NetworkModule,
          org.eclipse.paho.mqttv5.client.internal.NetworkModule {
    private final URI uri;
    private final BrokerSocket socket;

    private Connection(
        URI uri, SocketFactory sockets, int timeoutS, PacketLimitStream.Witness witness) {
      this.uri = uri;
      this.socket = new BrokerSocket(uri, sockets, timeoutS * 1000, witness);
    }

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
  }
}
