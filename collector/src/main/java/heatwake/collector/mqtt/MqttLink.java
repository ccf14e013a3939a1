package heatwake.collector.mqtt;

import java.util.List;

/** A connection to a broker, whichever version of MQTT is spoken on it. */
final class MqttLink implements BrokerLink, ProtocolClient.Listener {
  private final BrokerAccess access;
  private final Listener listener;
  private final ProtocolClient client;

  /** Guarded by this. */
  private boolean closed;

  MqttLink(BrokerAccess access, ProtocolClient.Maker version, Listener listener)
      throws BrokerException {
    this.access = access;
    this.listener = listener;
    this.client = version.make(access, this);
  }

  @Override
  public boolean connect() throws BrokerException {
    return client.connect();
  }

  @Override
  public void subscribe(List<String> topicFilters) throws BrokerException {
    int[] answers = client.subscribe(topicFilters);
    for (int i = 0; i < answers.length; i++) {
      if (answers[i] >= ProtocolClient.FIRST_REFUSAL) {
        throw access.refused("it may not subscribe to " + topicFilters.get(i));
      }
    }
  }

  @Override
  public synchronized void acknowledge(int packetId) {
    if (closed) {
      return;
    }
    try {
      client.acknowledge(packetId);
    } catch (BrokerException gone) {
      // The connection broke first: the broker delivers the message again and we know it.
    }
  }

  @Override
  public void close() {
    synchronized (this) {
      // The client has nothing to acknowledge with from here on.
      closed = true;
    }
    client.close();
  }

  @Override
  public void arrived(ArrivedMessage message) throws InterruptedException {
    listener.arrived(this, message);
  }

  @Override
  public void lost(String why) {
    listener.lost(this, access.shown() + ": " + why);
  }
}
