package heatwake.collector.probe;

import java.nio.charset.StandardCharsets;

/**
 * What a message is known again by, if its sender did not get our acknowledgement and sends it once
 * more.
 *
 * @param session what the sender keeps for us, in which packet identifiers mean something; or, of
 *     several senders, where they send to
 * @param number how many messages of the session came before it
 * @param identifier packet identifier that the sender gave it, another message gets it later; where
 *     several senders share the session, together with which of them it was
 * @param digest of the whole message
 */
public record MessageMark(String session, long number, long identifier, long digest) {
  /**
   * Marks kept of a session. A sender must not leave more messages than this unacknowledged if each
   * is to be known again.
   */
  public static final int KEPT = 1024;

  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  /**
   * The hash of Fowler, Noll and Vo (FNV-1a, 64 bits) over topic, a zero, which no topic holds, and
   * payload.
   */
  public static long digest(String topic, byte[] payload) {
    return fnv(digest(topic) * FNV_PRIME, payload);
  }

  /** The same hash over a text alone. */
  public static long digest(String text) {
    return fnv(FNV_OFFSET, text.getBytes(StandardCharsets.UTF_8));
  }

  private static long fnv(long digest, byte[] bytes) {
    for (byte one : bytes) {
      digest = (digest ^ (one & 0xFF)) * FNV_PRIME;
    }
    return digest;
  }
}
