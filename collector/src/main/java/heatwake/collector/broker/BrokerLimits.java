package heatwake.collector.broker;

/**
 * What a client may do to the broker.
 *
 * @param longestPacketBytes longest MQTT packet; a longer one ends the connection
 * @param clients clients connected at once
 * @param messagesPerS messages of one client per second, sustained; it may send ten seconds' worth
 *     in one go. One that sends more is slowed down
 */
public record BrokerLimits(int longestPacketBytes, int clients, int messagesPerS) {
  /** Plenty for a site: a hundred probes, each with many messages a second. */
  public static final BrokerLimits SITE = new BrokerLimits(64 * 1024, 100, 200);

  /** For a simulation that lets a night pass in a minute on this machine. */
  public static final BrokerLimits SIMULATION = new BrokerLimits(64 * 1024, 100, 1_000_000);
}
