package heatwake.collector.mqtt;

import heatwake.collector.probe.MessageMark;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the broker has delivered and whether it is safe, so that a message delivered again after a
 * broken connection is neither stored twice nor acknowledged too early.
 *
 * <p>A broker delivers again with the same packet identifier (MQTT 3.1.1, 4.4.0-1) and the
 * duplicate mark; an identifier without that mark is a new message. An identifier is free for
 * another message once the broker has our acknowledgement. Most brokers count up and come back to
 * an identifier after 65 535 messages; then identifier and content tell a message. Some take the
 * lowest that is free: there a message that we acknowledged cannot be told from one of the same
 * content that we never got, and to lose nothing it is taken for the latter.
 */
final class DeliveryLedger {
  /** More than any broker leaves unacknowledged; what is older was acknowledged long ago. */
  private static final int LONGEST = 4096;

  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  private final String session;
  private final Map<Integer, Entry> entries =
      new LinkedHashMap<>(64, 0.75f, false) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Entry> eldest) {
          return size() > LONGEST;
        }
      };

  /** Messages of the session so far, as far as we know. */
  private long count;

  /** The latest message that came under an identifier that had been another's not long before. */
  private long reusedAt = -LONGEST;

  private int unsettled;
  private boolean closed;

  DeliveryLedger(String session) {
    this.session = session;
  }

  /** One delivered message. */
  final class Entry {
    private final MessageMark mark;
    private BrokerLink link;
    private boolean durable;

    private Entry(MessageMark mark, BrokerLink link, boolean durable) {
      this.mark = mark;
      this.link = link;
      this.durable = durable;
    }

    /** What to store with its readings. */
    MessageMark mark() {
      return mark;
    }

    /** Its readings are on disk: acknowledges it on the connection that brought it last. */
    void settle() {
      BrokerLink owed;
      synchronized (DeliveryLedger.this) {
        durable = true;
        owed = link;
      }
      owed.acknowledge(mark.packetId());
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
    long digest = digest(message);
    synchronized (this) {
      Entry known = entries.get(message.packetId());
      boolean again = message.duplicate() && known != null && isSame(known, digest);
      if (!again && closed) {
        return null;
      }
      if (!again) {
        MessageMark mark = new MessageMark(session, count, message.packetId(), digest);
        Entry entry = new Entry(mark, link, false);
        put(entry);
        unsettled++;
        return entry;
      }
      known.link = link;
      if (!known.durable) {
        return null;
      }
    }
    link.acknowledge(message.packetId());
    return null;
  }

  /** Whether what came again under the identifier of a known message is that message. */
  private boolean isSame(Entry known, long digest) {
    // Until we acknowledge it, its identifier cannot be another's.
    boolean telling =
        !known.durable || (count - known.mark.number() < LONGEST && count - reusedAt >= LONGEST);
    return telling && known.mark.digest() == digest;
  }

  private void put(Entry entry) {
    Entry before = entries.remove(entry.mark.packetId());
    if (before != null && entry.mark.number() - before.mark.number() < LONGEST) {
      reusedAt = entry.mark.number();
    }
    entries.put(entry.mark.packetId(), entry);
    count = entry.mark.number() + 1;
  }

  /**
   * The hash of Fowler, Noll and Vo (FNV-1a, 64 bits) over topic, a zero, which no topic holds, and
   * payload.
   */
  private static long digest(ArrivedMessage message) {
    long digest = fnv(FNV_OFFSET, message.topic().getBytes(StandardCharsets.UTF_8)) * FNV_PRIME;
    return fnv(digest, message.payload());
  }

  private static long fnv(long digest, byte[] bytes) {
    for (byte one : bytes) {
      digest = (digest ^ (one & 0xFF)) * FNV_PRIME;
    }
    return digest;
  }

  /** Messages of which we know from before our start that they are on disk, the earlier first. */
  synchronized void remember(List<MessageMark> marks) {
    marks.forEach(mark -> put(new Entry(mark, null, true)));
  }

  /**
   * The broker forgot the session: identifiers begin anew.
   *
   * @return whether any message was known
   */
  synchronized boolean forget() {
    boolean any = !entries.isEmpty();
    entries.clear();
    reusedAt = count - LONGEST;
    return any;
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
