package heatwake.collector.mqtt;

import java.util.Arrays;
import java.util.List;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A connection that speaks MQTT 3.1.1. */
final class Mqtt311Link implements BrokerLink, MqttCallback {
  private static final int CONNECT_TIMEOUT_S = 10;
  private static final long ANSWER_TIMEOUT_MS = 15_000;
  private static final int KEEP_ALIVE_S = 30;

  /** Return code of a subscription that the broker refuses (MQTT 3.1.1, section 3.9.3). */
  private static final int SUBSCRIPTION_REFUSED = 0x80;

  private final BrokerAccess access;
  private final Listener listener;
  private final MqttAsyncClient client;
  private boolean closed;

  Mqtt311Link(BrokerAccess access, Listener listener) throws BrokerException {
    this.access = access;
    this.listener = listener;
    try {
      client =
          new MqttAsyncClient(access.uri().toString(), access.clientId(), new MemoryPersistence());
    } catch (MqttException fault) {
      throw BrokerException.unreachable(access.shown() + ": " + LinkFault.words(fault));
    }
    client.setManualAcks(true);
    client.setCallback(this);
  }

  @Override
  public boolean connect() throws BrokerException {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setCleanSession(false);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout(CONNECT_TIMEOUT_S);
    options.setKeepAliveInterval(KEEP_ALIVE_S);
    access.tls().ifPresent(options::setSocketFactory);
    access
        .credentials()
        .ifPresent(
            known -> {
              options.setUserName(known.user());
              options.setPassword(known.password().toCharArray());
            });
    try {
      IMqttToken token = client.connect(options);
      token.waitForCompletion(ANSWER_TIMEOUT_MS);
      return token.getSessionPresent();
    } catch (MqttException fault) {
      throw told(fault);
    }
  }

  private BrokerException told(MqttException fault) {
    return switch (fault.getReasonCode()) {
      // Brokers answer a wrong password with either.
      case MqttException.REASON_CODE_FAILED_AUTHENTICATION,
          MqttException.REASON_CODE_NOT_AUTHORIZED ->
          BrokerException.refused(access.refusal("not authorised; check user and password"));
      case MqttException.REASON_CODE_INVALID_CLIENT_ID ->
          BrokerException.refused(access.refusal("client identifier not accepted"));
      case MqttException.REASON_CODE_INVALID_PROTOCOL_VERSION ->
          BrokerException.refused(access.refusal("it does not speak MQTT 3.1.1"));
      default -> BrokerException.unreachable(access.shown() + ": " + LinkFault.words(fault));
    };
  }

  @Override
  public void subscribe(List<String> topicFilters) throws BrokerException {
    int[] qualities = new int[topicFilters.size()];
    Arrays.fill(qualities, 1);
    try {
      IMqttToken token = client.subscribe(topicFilters.toArray(new String[0]), qualities);
      token.waitForCompletion(ANSWER_TIMEOUT_MS);
      int[] granted = token.getGrantedQos();
      for (int i = 0; i < granted.length; i++) {
        if (granted[i] == SUBSCRIPTION_REFUSED) {
          throw BrokerException.refused(
              access.refusal("it may not subscribe to " + topicFilters.get(i)));
        }
      }
    } catch (MqttException fault) {
      throw told(fault);
    }
  }

  @Override
  public synchronized void acknowledge(int packetId) {
    if (closed) {
      return;
    }
    try {
      client.messageArrivedComplete(packetId, 1);
    } catch (MqttException gone) {
      // The connection broke first: the broker delivers the message again and we know it.
    }
  }

  @Override
  public void close() {
    synchronized (this) {
      // The client has nothing to acknowledge with from here on.
      closed = true;
    }
    try {
      if (client.isConnected()) {
        client.disconnect(0).waitForCompletion(1000);
      } else {
        client.disconnectForcibly(0, 100, false);
      }
    } catch (MqttException gone) {
      // Nothing is left to take leave of.
    }
    try {
      client.close(true);
    } catch (MqttException gone) {
      // Closed is all that was wanted.
    }
  }

  @Override
  public void messageArrived(String topic, MqttMessage message) throws InterruptedException {
    listener.arrived(
        this,
        new ArrivedMessage(
            message.getQos() == 0 ? 0 : message.getId(),
            topic,
            message.getPayload(),
            message.isRetained(),
            message.isDuplicate()));
  }

  @Override
  public void connectionLost(Throwable cause) {
    listener.lost(this, access.shown() + ": " + LinkFault.words(cause));
  }

  @Override
  public void deliveryComplete(IMqttDeliveryToken token) {
    // We publish nothing.
  }
}
