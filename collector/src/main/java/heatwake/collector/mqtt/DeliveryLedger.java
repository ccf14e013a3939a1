package heatwake.collector.mqtt;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
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

  private final Map<Integer, Entry> entries =
      new LinkedHashMap<>(64, 0.75f, false) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Entry> eldest) {
          return size() > LONGEST;
        }
      };

  private int unsettled;
  private boolean closed;

  /** One delivered message. */
  final class Entry {
    private final int packetId;
    private final int digest;
    private BrokerLink link;
    private boolean durable;

    private Entry(int packetId, int digest, BrokerLink link) {
      this.packetId = packetId;
      this.digest = digest;
      this.link = link;
    }

    /** Its readings are on disk: acknowledges it on the connection that brought it last. */
    void settle() {
      BrokerLink owed;
      synchronized (DeliveryLedger.this) {
        durable = true;
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
    int digest =
        31 * Arrays.hashCode(message.topic().getBytes(StandardCharsets.UTF_8))
            + Arrays.hashCode(message.payload());
    synchronized (this) {
      Entry known = entries.get(message.packetId());
      boolean again = message.duplicate() && known != null && known.digest == digest;
      if (!again && closed) {
        return null;
      }
      if (!again) {
        entries.remove(message.packetId());
        Entry entry = new Entry(message.packetId(), digest, link);
        entries.put(message.packetId(), entry);
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

  /** The broker forgot the session: identifiers begin anew. */
  synchronized void forget() {
    entries.clear();
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
