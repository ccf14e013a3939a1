package heatwake.collector.mqtt;

import heatwake.collector.probe.KnownMessages;
import heatwake.collector.probe.MessageMark;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the broker has delivered and whether it is safe, so that a message delivered again after a
 * broken connection is neither stored twice nor acknowledged too early.
 *
 * <p>A broker delivers again with the same packet identifier (MQTT 3.1.1, 4.4.0-1) and the
 * duplicate mark; an identifier without that mark is a new message.
 */
final class DeliveryLedger {
  /** More than any broker leaves unacknowledged; what is older was acknowledged long ago. */
  private static final int LONGEST = 4096;

  private final String session;
  private final KnownMessages known = new KnownMessages(LONGEST);

  /**
   * Those that are not on disk, by packet identifier, which is its own until it is acknowledged.
   */
  private final Map<Integer, Entry> waiting = new HashMap<>();

  private int unsettled;
  private boolean closed;

  DeliveryLedger(String session) {
    this.session = session;
  }

  /** One delivered message. */
  final class Entry {
    private final int packetId;
    private final MessageMark mark;
    private BrokerLink link;

    private Entry(BrokerLink link, int packetId, MessageMark mark) {
      this.packetId = packetId;
      this.mark = mark;
      this.link = link;
    }

    /** What to store with its readings. */
    MessageMark mark() {
      return mark;
    }

    /** Its readings are on disk: acknowledges it on the connection that brought it last. */
    void settle() {
      BrokerLink owed;
      synchronized (DeliveryLedger.this) {
        waiting.remove(packetId, this);
        owed = link;
      }
      owed.acknowledge(packetId);
      synchronized (DeliveryLedger.this) {
        // Not before: who waits for this takes leave of the broker.
        unsettled--;
        DeliveryLedger.this.notifyAll();
      }
    }
  }

  /**
   * Notes a message that wants an acknowledgement.
   *
   * @return its entry if it is new; null if it was delivered before, in which case it is
   *     acknowledged here as soon as it is safe, and after the close, when the broker keeps it
   */
  Entry arrived(BrokerLink link, ArrivedMessage message) {
    int packetId = message.packetId();
    long digest = MessageMark.digest(message.topic(), message.payload());
    synchronized (this) {
      Entry underWay = waiting.get(packetId);
      if (message.duplicate() && underWay != null && underWay.mark.digest() == digest) {
        underWay.link = link;
        return null;
      }
      if (!message.duplicate() || !known.tells(packetId, digest)) {
        return closed ? null : add(link, packetId, digest);
      }
    }
    link.acknowledge(packetId);
    return null;
  }

  private Entry add(BrokerLink link, int packetId, long digest) {
    MessageMark mark = new MessageMark(session, known.count(), packetId, digest);
    Entry entry = new Entry(link, packetId, mark);
    known.add(mark.number(), packetId, digest);
    waiting.put(packetId, entry);
    unsettled++;
    return entry;
  }

  /** Messages of which we know from before our start that they are on disk, the earlier first. */
  synchronized void remember(List<MessageMark> marks) {
    marks.forEach(mark -> known.add(mark.number(), mark.identifier(), mark.digest()));
  }

  /**
   * The broker forgot the session: identifiers begin anew.
   *
   * @return whether any message was known
   */
  synchronized boolean forget() {
    waiting.clear();
    return known.forget();
  }

  /**
   * Takes nothing new from here on, and waits until all that was delivered is safe and
   * acknowledged, at most so long.
   */
  synchronized void close(long timeoutMs) throws InterruptedException {
    closed = true;
    long deadline = System.nanoTime() + timeoutMs * 1_000_000;
    while (unsettled > 0) {
      long leftMs = (deadline - System.nanoTime()) / 1_000_000;
      if (leftMs <= 0) {
        return;
      }
      wait(leftMs);
    }
  }
}
