package heatwake.collector.broker;

import io.netty.channel.ChannelFuture;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.paho.client.mqttv3.MqttTopic;

/**
 * Messages on their way from a probe through the broker to our own sources. A source acknowledges
 * one when its readings are on disk; only then is it acknowledged to the probe, so that what a
 * probe believes safe is safe.
 *
 * <p>The broker's library does not say which message on its way out is which that came in; they are
 * told by topic and payload, and of equal ones it does not matter.
 */
final class Transit {
  private final Map<String, Reader> ours = new HashMap<>();
  private boolean closed;

  /** Answers that are being sent. */
  private int answering;

  /**
   * By what a message is known again.
   *
   * @param digest of topic and payload, as in a mark
   */
  record Content(String topic, long digest) {}

  /** A message that a probe handed over and waits to have acknowledged. */
  static final class Taking {
    private final Content content;
    private final Handover handover;

    /** Those of our sources that hear it and do not have it safe. */
    private int readers;

    /** Sends the broker's answer to the probe, once there is one that was not sent. */
    private Optional<Supplier<ChannelFuture>> answer = Optional.empty();

    private boolean acknowledged;

    private Taking(Content content, Handover handover) {
      this.content = content;
      this.handover = handover;
    }

    /** What it is known again by. */
    Content content() {
      return content;
    }

    /** Whether the probe has been told that it is safe; what it sends then may be another one. */
    boolean isAcknowledged() {
      return acknowledged;
    }
  }

  /** One of our own sources. */
  private static final class Reader {
    private List<String> filters = List.of();

    /** Taken and on the way to it, the earlier first. */
    private final Map<Content, Deque<Taking>> underWay = new HashMap<>();

    /** Those of which it has its copy and that are not safe, by the copy's packet identifier. */
    private final Map<Integer, Taking> handed = new HashMap<>();

    private boolean hears(String topic) {
      try {
        return filters.stream().anyMatch(filter -> MqttTopic.isMatched(filter, topic));
      } catch (IllegalArgumentException noTopic) {
        // The broker ends the connection of whoever sends it.
        return false;
      }
    }

    private void add(Taking taking) {
      underWay.computeIfAbsent(taking.content, first -> new ArrayDeque<>()).addLast(taking);
      taking.readers++;
    }

    private void hand(int packetId, Content content) {
      Taking before = handed.get(packetId);
      if (before != null && before.content.equals(content)) {
        // Once more.
        return;
      }
      handed.remove(packetId);
      if (before != null) {
        underWay.computeIfAbsent(before.content, first -> new ArrayDeque<>()).addFirst(before);
      }
      Deque<Taking> equal = underWay.get(content);
      if (equal != null) {
        handed.put(packetId, equal.removeFirst());
        if (equal.isEmpty()) {
          underWay.remove(content);
        }
      }
    }

    private int left() {
      return handed.size() + underWay.values().stream().mapToInt(Deque::size).sum();
    }
  }

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

  /** A client hands over a message to be acknowledged; nothing if nothing is taken any more. */
  synchronized Optional<Taking> take(Content content, Handover handover) {
    if (closed) {
      return Optional.empty();
    }
    Taking taking = new Taking(content, handover);
    for (Reader reader : ours.values()) {
      if (reader.hears(content.topic())) {
        reader.add(taking);
      }
    }
    return Optional.of(taking);
  }

  /** Whether anything is still taken, and new clients may come in. */
  synchronized boolean isOpen() {
    return !closed;
  }

  /** One of our sources subscribes to all that it wants to hear. */
  synchronized void subscribed(String client, List<String> filters) {
    ours.get(client).filters = List.copyOf(filters);
  }

  /** Those of our sources that have subscribed. */
  synchronized Set<String> readers() {
    return ours.entrySet().stream()
        .filter(one -> !one.getValue().filters.isEmpty())
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  /** One of our sources is sent a message, perhaps once more. */
  synchronized void handed(String client, int packetId, Content content) {
    ours.get(client).hand(packetId, content);
  }

  /**
   * How the message was handed to the broker that one of our sources was sent and does not have
   * safe yet; nothing if that is not known.
   *
   * @param packetId identifier that the broker gave our source's copy
   * @param digest of the message
   */
  synchronized Optional<Handover> handover(String client, int packetId, long digest) {
    return Optional.ofNullable(ours.get(client))
        .map(reader -> reader.handed.get(packetId))
        .filter(taking -> taking.content.digest() == digest)
        .map(taking -> taking.handover);
  }

  /** One of our sources has a message safe. */
  synchronized void acknowledged(String client, int packetId) {
    Taking taking = ours.get(client).handed.remove(packetId);
    if (taking != null) {
      taking.readers--;
      answerIfSafe(taking);
      notifyAll();
    }
  }

  /**
   * The broker answers a message.
   *
   * @param answer sends the answer; called once the message is safe, unless a later one, on another
   *     connection, comes in its place
   */
  synchronized void answer(Taking taking, Supplier<ChannelFuture> answer) {
    taking.answer = Optional.of(answer);
    answerIfSafe(taking);
  }

  private void answerIfSafe(Taking taking) {
    if (taking.readers > 0 || taking.answer.isEmpty()) {
      return;
    }
    taking.acknowledged = true;
    answering++;
    ChannelFuture unused = taking.answer.get().get().addListener(sentOrNot -> answered());
    taking.answer = Optional.empty();
  }

  private synchronized void answered() {
    answering--;
    notifyAll();
  }

  /**
   * Takes nothing more, and waits until all that was taken is safe and answered.
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
    return answering + ours.values().stream().mapToInt(Reader::left).sum();
  }
}
