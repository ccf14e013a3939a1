package heatwake.collector.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Set;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.internal.NetworkModule;
import org.eclipse.paho.client.mqttv3.spi.NetworkModuleFactory;

/** Puts our socket beneath the MQTT 3.1.1 client for {@code mqtt} and {@code mqtts} addresses. */
public final class Mqtt311Transport implements NetworkModuleFactory {
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
  public NetworkModule createNetworkModule(URI uri, MqttConnectOptions options, String clientId) {
    BrokerSocket socket =
        new BrokerSocket(
            uri,
            options.getSocketFactory(),
            options.getConnectionTimeout() * 1000,
            duplicate -> {});
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
