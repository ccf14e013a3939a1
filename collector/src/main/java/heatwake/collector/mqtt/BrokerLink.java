package heatwake.collector.mqtt;

import java.util.List;

/** One connection to a broker, good for one attempt. */
interface BrokerLink {
  /** What the other end does. Called on threads of the link. */
  interface Listener {
    /** A message arrived. May block, which the broker feels as back-pressure. */
    void arrived(BrokerLink link, ArrivedMessage message) throws InterruptedException;

    /** The connection broke. */
    void lost(BrokerLink link, String why);
  }

  /**
   * Connects, resuming the session that the broker keeps under our name.
   *
   * @return whether the broker had one
   */
  boolean connect() throws BrokerException;

  /** Subscribes at quality of service 1. */
  void subscribe(List<String> topicFilters) throws BrokerException;

  /** Tells the broker that a message is safe. Does nothing if the connection is gone. */
  void acknowledge(int packetId);

  /** Leaves the broker, which keeps the session. */
  void close();
}
