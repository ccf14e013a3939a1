package heatwake.collector.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;

/** MQTT 5. */
final class Mqtt5Client implements ProtocolClient, MqttCallback {
  /** How long the broker keeps our session while we are away. */
  private static final long SESSION_EXPIRY_S = Duration.ofDays(7).toSeconds();

  /** Messages unacknowledged at once; fewer than the ledger remembers. */
  private static final int RECEIVE_MAXIMUM = 1000;

  /** Retained messages only for a subscription that the session did not have (3.8.3.1). */
  private static final int RETAINED_FOR_NEW_SUBSCRIPTION = 1;

  private final BrokerAccess access;
  private final Listener listener;
  private final MqttAsyncClient client;
  private final WitnessedOptions options = new WitnessedOptions();

  Mqtt5Client(BrokerAccess access, Listener listener) throws BrokerException {
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
    options.setCleanStart(false);
    options.setSessionExpiryInterval(SESSION_EXPIRY_S);
    options.setReceiveMaximum(RECEIVE_MAXIMUM);
    options.setMaximumPacketSize((long) PacketLimitStream.LONGEST_BODY);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout(BrokerAccess.CONNECT_TIMEOUT_S);
    options.setKeepAliveInterval(BrokerAccess.KEEP_ALIVE_S);
    access.tls().ifPresent(options::setSocketFactory);
    access
        .credentials()
        .ifPresent(
            known -> {
              options.setUserName(known.user());
              options.setPassword(known.password().getBytes(StandardCharsets.UTF_8));
            });
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
      case MqttReturnCode.RETURN_CODE_BAD_USERNAME_OR_PASSWORD,
          MqttReturnCode.RETURN_CODE_NOT_AUTHORIZED ->
          access.notAuthorised();
      case MqttReturnCode.RETURN_CODE_IDENTIFIER_NOT_VALID -> access.identifierRefused();
      case MqttReturnCode.RETURN_CODE_UNSUPPORTED_PROTOCOL_VERSION,
          MqttException.REASON_CODE_MALFORMED_PACKET ->
          access.refused("it does not speak MQTT 5; leave version out of the rig");
      default -> access.unreachable(fault);
    };
  }

  @Override
  public int[] subscribe(List<String> topicFilters) throws BrokerException {
    MqttSubscription[] wanted =
        topicFilters.stream()
            .map(
                filter -> {
                  MqttSubscription one = new MqttSubscription(filter, 1);
                  one.setRetainHandling(RETAINED_FOR_NEW_SUBSCRIPTION);
                  return one;
                })
            .toArray(MqttSubscription[]::new);
    try {
      IMqttToken token = client.subscribe(wanted);
      token.waitForCompletion(BrokerAccess.ANSWER_TIMEOUT_MS);
      return token.getReasonCodes();
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
            options.nextIsDuplicate()));
  }

  @Override
  public void disconnected(MqttDisconnectResponse response) {
    listener.lost(
        response.getException() != null
            ? LinkFault.words(response.getException())
            : "the broker ended the connection, reason " + response.getReturnCode());
  }

  @Override
  public void mqttErrorOccurred(MqttException fault) {
    // If it costs the connection, that is told by disconnected.
  }

  @Override
  public void deliveryComplete(IMqttToken token) {
    // We publish nothing.
  }

  @Override
  public void connectComplete(boolean again, String uri) {
    // The connect call returns.
  }

  @Override
  public void authPacketArrived(int reasonCode, MqttProperties properties) {
    // We ask for no extended authentication.
  }
}
