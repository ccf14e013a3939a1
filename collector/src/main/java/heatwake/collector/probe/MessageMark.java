package heatwake.collector.probe;

/**
 * What a message is known again by, if its sender did not get our acknowledgement and sends it once
 * more.
 *
 * @param session what the sender keeps for us, in which packet identifiers mean something
 * @param number how many messages of the session came before it
 * @param packetId identifier that the sender gave it; another message gets it later
 * @param digest of the whole message
 */
public record MessageMark(String session, long number, int packetId, long digest) {
  /**
   * Marks kept of a session. A sender must not leave more messages than this unacknowledged if each
   * is to be known again.
   */
  public static final int KEPT = 1024;
}
