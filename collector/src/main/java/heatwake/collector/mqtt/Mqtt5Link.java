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

/** A connection that speaks MQTT 5. */
final class Mqtt5Link implements BrokerLink, MqttCallback {
  private static final int CONNECT_TIMEOUT_S = 10;
  private static final long ANSWER_TIMEOUT_MS = 15_000;
  private static final int KEEP_ALIVE_S = 30;

  /** How long the broker keeps our session while we are away. */
  private static final long SESSION_EXPIRY_S = Duration.ofDays(7).toSeconds();

  /** Messages unacknowledged at once; fewer than the ledger remembers. */
  private static final int RECEIVE_MAXIMUM = 1000;

  /** Reason codes from here on are failures (MQTT 5, section 2.4). */
  private static final int FIRST_FAILURE = 0x80;

  /** Retained messages only for a subscription that the session did not have (3.8.3.1). */
  private static final int RETAINED_FOR_NEW_SUBSCRIPTION = 1;

  private final BrokerAccess access;
  private final Listener listener;
  private final MqttAsyncClient client;
  private final Mqtt5Transport.Witnessed options = new Mqtt5Transport.Witnessed();
  private boolean closed;

  Mqtt5Link(BrokerAccess access, Listener listener) throws BrokerException {
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
    options.setCleanStart(false);
    options.setSessionExpiryInterval(SESSION_EXPIRY_S);
    options.setReceiveMaximum(RECEIVE_MAXIMUM);
    options.setMaximumPacketSize((long) PacketLimitStream.LONGEST_BODY);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout(CONNECT_TIMEOUT_S);
    options.setKeepAliveInterval(KEEP_ALIVE_S);
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
      token.waitForCompletion(ANSWER_TIMEOUT_MS);
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
          BrokerException.refused(access.refusal("not authorised; check user and password"));
      case MqttReturnCode.RETURN_CODE_IDENTIFIER_NOT_VALID ->
          BrokerException.refused(access.refusal("client identifier not accepted"));
      case MqttReturnCode.RETURN_CODE_UNSUPPORTED_PROTOCOL_VERSION,
          MqttException.REASON_CODE_MALFORMED_PACKET ->
          BrokerException.refused(
              access.refusal("it does not speak MQTT 5; leave version out of the rig"));
      default -> BrokerException.unreachable(access.shown() + ": " + LinkFault.words(fault));
    };
  }

  @Override
  public void subscribe(List<String> topicFilters) throws BrokerException {
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
      token.waitForCompletion(ANSWER_TIMEOUT_MS);
      int[] answers = token.getReasonCodes();
      for (int i = 0; i < answers.length; i++) {
        if (answers[i] >= FIRST_FAILURE) {
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
            options.nextIsDuplicate()));
  }

  @Override
  public void disconnected(MqttDisconnectResponse response) {
    String why =
        response.getException() != null
            ? LinkFault.words(response.getException())
            : "the broker ended the connection, reason " + response.getReturnCode();
    listener.lost(this, access.shown() + ": " + why);
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
