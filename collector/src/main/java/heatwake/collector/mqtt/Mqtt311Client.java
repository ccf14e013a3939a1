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

/** MQTT 3.1.1. */
final class Mqtt311Client implements ProtocolClient, MqttCallback {
  private final BrokerAccess access;
  private final Listener listener;
  private final MqttAsyncClient client;

  Mqtt311Client(BrokerAccess access, Listener listener) throws BrokerException {
    this.access = access;
    this.listener = listener;
    try {
      client =
          new MqttAsyncClient(access.uri().toString(), access.clientId(), new MemoryPersistence());
    } catch (MqttException fault) {
      throw access.unreachable(fault);
    }
    client.setManualAcks(true);
    client.setCallback(this);
  }

  @Override
  public boolean connect() throws BrokerException {
    MqttConnectOptions options = Mqtt311Options.of(access);
    options.setCleanSession(false);
    try {
      IMqttToken token = client.connect(options);
      token.waitForCompletion(BrokerAccess.ANSWER_TIMEOUT_MS);
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
          access.notAuthorised();
      case MqttException.REASON_CODE_INVALID_CLIENT_ID -> access.identifierRefused();
      case MqttException.REASON_CODE_INVALID_PROTOCOL_VERSION ->
          access.refused("it does not speak MQTT 3.1.1");
      default -> access.unreachable(fault);
    };
  }

  @Override
  public int[] subscribe(List<String> topicFilters) throws BrokerException {
    int[] qualities = new int[topicFilters.size()];
    Arrays.fill(qualities, 1);
    try {
      IMqttToken token = client.subscribe(topicFilters.toArray(new String[0]), qualities);
      token.waitForCompletion(BrokerAccess.ANSWER_TIMEOUT_MS);
      return token.getGrantedQos();
    } catch (MqttException fault) {
      throw told(fault);
    }
  }

  @Override
  public void acknowledge(int packetId) throws BrokerException {
    try {
      client.messageArrivedComplete(packetId, 1);
    } catch (MqttException fault) {
      throw told(fault);
    }
  }

  @Override
  public void close() {
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
        new ArrivedMessage(
            message.getQos() == 0 ? 0 : message.getId(),
            topic,
            message.getPayload(),
            message.isRetained(),
            message.isDuplicate()));
  }

  @Override
  public void connectionLost(Throwable cause) {
    listener.lost(LinkFault.words(cause));
  }

  @Override
  public void deliveryComplete(IMqttDeliveryToken token) {
    // We publish nothing.
  }
}
