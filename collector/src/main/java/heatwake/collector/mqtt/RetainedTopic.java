package heatwake.collector.mqtt;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * A topic on which the latest of something is kept by the broker (retained). When we vanish, the
 * broker puts the last will in its place.
 */
public final class RetainedTopic implements AutoCloseable {
  private static final long ANSWER_TIMEOUT_MS = 5_000;

  private final BrokerAccess access;
  private final String topic;
  private final byte[] lastWill;
  private final MqttAsyncClient client;

  RetainedTopic(BrokerAccess access, String topic, String lastWill) {
    this.access = access;
    this.topic = topic;
    this.lastWill = lastWill.getBytes(StandardCharsets.UTF_8);
    try {
      client =
          new MqttAsyncClient(access.uri().toString(), access.clientId(), new MemoryPersistence());
    } catch (MqttException e) {
      throw new IllegalArgumentException(access.shown() + ": " + LinkFault.words(e), e);
    }
  }

  /** Replaces what is on the topic; connects first if need be. */
  public void put(String text) throws IOException {
    try {
      if (!client.isConnected()) {
        connect();
      }
      client
          .publish(topic, text.getBytes(StandardCharsets.UTF_8), 1, true)
          .waitForCompletion(ANSWER_TIMEOUT_MS);
    } catch (MqttException e) {
      throw new IOException(access.shown() + ": " + LinkFault.words(e), e);
    }
  }

  private void connect() throws MqttException {
    MqttConnectOptions options = Mqtt311Options.of(access);
    options.setCleanSession(true);
    options.setWill(topic, lastWill, 1, true);
    client.connect(options).waitForCompletion(BrokerAccess.CONNECT_TIMEOUT_S * 1000L);
  }

  /** Leaves; what was put last stays. */
  @Override
  public void close() {
    try {
      if (client.isConnected()) {
        client.disconnect(0).waitForCompletion(ANSWER_TIMEOUT_MS);
      }
      client.close(true);
    } catch (MqttException e) {
      // Left is all that was wanted.
      return;
    }
  }
}
