package heatwake.collector.mqtt;

import java.util.List;

/**
 * A client library for one version of MQTT, good for one connection. What the libraries have of
 * their own (types, option names, reason codes) stays behind this; what we do with a connection is
 * {@link MqttLink}'s.
 */
interface ProtocolClient {
  /** Answers to a subscription from here on are refusals (3.1.1: 3.9.3; 5: 2.4). */
  int FIRST_REFUSAL = 0x80;

  /** What the other end does. Called on threads of the library. */
  interface Listener {
    /** A message arrived. May block, which the broker feels as back-pressure. */
    void arrived(ArrivedMessage message) throws InterruptedException;

    /**
     * The connection broke.
     *
     * @param why in words, without the broker's address
     */
    void lost(String why);
  }

  /** Makes one; connects nothing yet. */
  interface Maker {
    ProtocolClient make(BrokerAccess access, Listener listener) throws BrokerException;
  }

  /**
   * Connects, resuming the session that the broker keeps under our name.
   *
   * @return whether the broker had one
   */
  boolean connect() throws BrokerException;

  /**
   * Subscribes at quality of service 1.
   *
   * @return the broker's answer for each filter
   */
  int[] subscribe(List<String> topicFilters) throws BrokerException;

  /**
   * Acknowledges a message.
   *
   * @throws BrokerException if the connection is gone
   */
  void acknowledge(int packetId) throws BrokerException;

  /** Takes leave of the broker if there still is a connection, and frees everything. */
  void close();
}
