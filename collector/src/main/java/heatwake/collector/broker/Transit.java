package heatwake.collector.broker;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.paho.client.mqttv3.MqttTopic;

/**
 * Messages that the broker took, and so acknowledges to a probe, and that our own sources have not
 * acknowledged to the broker yet: until they do, which is when the readings are on disk, they are
 * in memory alone. So before a stop nothing more is taken, and what was taken is waited for.
 *
 * <p>The broker's library does not say which message on its way out is which that came in; they are
 * told by topic and payload, and of equal ones it does not matter.
 */
final class Transit {
  private final Map<String, Reader> ours = new HashMap<>();
  private boolean closed;

  /** One of our own sources. */
  private static final class Reader {
    private List<String> filters = List.of();

    /** Taken and not acknowledged; how many of each. */
    private final Map<Content, Integer> underWay = new HashMap<>();

    /** By packet identifier, those of which it has its copy. */
    private final Map<Integer, Content> handed = new HashMap<>();

    private boolean hears(String topic) {
      try {
        return filters.stream().anyMatch(filter -> MqttTopic.isMatched(filter, topic));
      } catch (IllegalArgumentException noTopic) {
        // The broker ends the connection of whoever sends it.
        return false;
      }
    }

    private void done(Content content) {
      underWay.computeIfPresent(content, (same, times) -> times > 1 ? times - 1 : null);
    }
  }

  /** By what a message is known again. */
  record Content(String topic, int payloadDigest) {}

  /**
   * Keeps an eye on what goes to some clients.
   *
   * @param ours ids of our own sources
   */
  Transit(Set<String> ours) {
    ours.forEach(client -> this.ours.put(client, new Reader()));
  }

  /** Whether this is one of our own sources. */
  boolean isOurs(String client) {
    return ours.containsKey(client);
  }

  /**
   * A client wants to hand over a message.
   *
   * @param acknowledged whether the broker is to acknowledge it
   * @return false if nothing is taken any more
   */
  synchronized boolean take(Content content, boolean acknowledged) {
    if (closed) {
      return false;
    }
    if (acknowledged) {
      for (Reader reader : ours.values()) {
        if (reader.hears(content.topic())) {
          reader.underWay.merge(content, 1, Integer::sum);
        }
      }
    }
    return true;
  }

  /** Whether new clients may still come in. */
  synchronized boolean isOpen() {
    return !closed;
  }

  /** One of our sources subscribes to all that it wants to hear. */
  synchronized void subscribed(String client, List<String> filters) {
    ours.get(client).filters = List.copyOf(filters);
  }

  /** One of our sources is sent a message, perhaps once more. */
  synchronized void handed(String client, int packetId, Content content) {
    ours.get(client).handed.put(packetId, content);
  }

  /** One of our sources has a message safe. */
  synchronized void acknowledged(String client, int packetId) {
    Reader reader = ours.get(client);
    Content content = reader.handed.remove(packetId);
    if (content != null) {
      reader.done(content);
      notifyAll();
    }
  }

  /**
   * Takes nothing more, and waits until all that was taken is safe.
   *
   * @param patience how long at most
   * @return how many messages are not
   */
  synchronized int close(Duration patience) throws InterruptedException {
    closed = true;
    long deadlineNs = System.nanoTime() + patience.toNanos();
    while (left() > 0) {
      long leftMs = (deadlineNs - System.nanoTime()) / 1_000_000;
      if (leftMs <= 0) {
        break;
      }
      wait(leftMs);
    }
    return left();
  }

  private int left() {
    return ours.values().stream()
        .flatMap(reader -> reader.underWay.values().stream())
        .mapToInt(Integer::intValue)
        .sum();
  }
}
