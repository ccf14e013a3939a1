package heatwake.collector.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Set;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.internal.NetworkModule;
import org.eclipse.paho.mqttv5.client.spi.NetworkModuleFactory;

/** Puts our socket beneath the MQTT 5 client for {@code mqtt} and {@code mqtts} addresses. */
public final class Mqtt5Transport implements NetworkModuleFactory {
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
        new BrokerSocket(uri, options.getSocketFactory(), options.getConnectionTimeout() * 1000);
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
