package heatwake.collector.probe;

import java.util.Map;

/**
 * The messages that came from one sender, to tell one that it sends once more from another under
 * the same identifier.
 *
 * <p>An identifier is free for another message once the sender has our acknowledgement (MQTT 3.1.1,
 * 2.3.1). Most senders count up and come back to an identifier after 65 535 messages, some draw it
 * by lot, some take the lowest that is free. So a message is told only if its identifier came more
 * recently than any identifier of this sender ever came back: had it been given to another message
 * meanwhile, which never reached us, that would have been sooner than this sender does. Where that
 * does not tell, and to lose nothing, it is another message. Not safe for use by several threads.
 */
public final class KnownMessages {
  private final int most;
  private final Map<Long, Known> byIdentifier;

  /** Messages of the sender so far, as far as we know. */
  private long count;

  /** How many messages later, at least, an identifier was another's. */
  private long closestReuse;

  /** When the sender's session of now began, and the earliest message that it may send again. */
  private long sessionStart;

  private long earliest;

  /** The latest message under an identifier. */
  private record Known(long number, long digest) {}

  /**
   * Nothing known yet.
   *
   * @param most how many messages to remember at most
   */
  public KnownMessages(int most) {
    this.most = most;
    this.byIdentifier = new Latest<>(most);
    this.closestReuse = most;
  }

  /** The number of the next message. */
  public long count() {
    return count;
  }

  /** A message came, or is known from before our start; the earlier are to be added first. */
  public void add(long number, long identifier, long digest) {
    Known before = byIdentifier.remove(identifier);
    if (before != null) {
      closestReuse = Math.min(closestReuse, number - before.number());
    }
    byIdentifier.put(identifier, new Known(number, digest));
    count = number + 1;
  }

  /** Whether what is sent once more under an identifier came before. */
  public boolean tells(long identifier, long digest) {
    Known known = byIdentifier.get(identifier);
    return known != null
        && known.digest() == digest
        && known.number() >= earliest
        && count - known.number() < closestReuse;
  }

  /**
   * The sender begins a session anew, in which it may give identifiers from the first one on. Some
   * nevertheless send once more what was under way in the one before, which is told; of earlier
   * ones nothing is.
   */
  public void sessionBegan() {
    earliest = sessionStart;
    sessionStart = count;
  }

  /**
   * The sender has forgotten all that it sent.
   *
   * @return whether any message was known
   */
  public boolean forget() {
    boolean any = !byIdentifier.isEmpty();
    byIdentifier.clear();
    closestReuse = most;
    return any;
  }
}
