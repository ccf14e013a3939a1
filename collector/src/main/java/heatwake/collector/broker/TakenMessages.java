package heatwake.collector.broker;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The messages that clients handed to the broker, to know those that they send once more. The
 * broker's library (0.17) stumbles over whatever is marked as a duplicate: it neither delivers nor
 * acknowledges it, so that a probe would send it for ever, though the broker may never have got it:
 * it was sent to one before, or not taken because of a stop.
 */
final class TakenMessages {
  /** More than can be connected. */
  private static final int MOST_CLIENTS = 200;

  /** More than a probe leaves unacknowledged. */
  private static final int MOST_OF_A_CLIENT = 1024;

  private final Map<String, Client> clients = new Latest<>(MOST_CLIENTS);

  /** The latest entries of a map. */
  private static final class Latest<K, V> extends LinkedHashMap<K, V> {
    private static final long serialVersionUID = 1L;
    private final int most;

    private Latest(int most) {
      this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
      return size() > most;
    }
  }

  /** What one client handed over, by packet identifier. */
  private static final class Client {
    private Object connection;
    private final Map<Integer, Transit.Taking> taken = new Latest<>(MOST_OF_A_CLIENT);
  }

  /** A client was let in by a connection; what comes by another one of its has no effect now. */
  synchronized void letIn(String client, Object connection) {
    Client known = clients.remove(client);
    if (known == null) {
      known = new Client();
    }
    known.connection = connection;
    clients.put(client, known);
  }

  /** A client that had no id has gone, and cannot come back as itself. */
  synchronized void forget(String client) {
    clients.remove(client);
  }

  /** Whether a client has come in by another connection, so that this one is not listened to. */
  synchronized boolean isElsewhere(String client, Object connection) {
    Client known = clients.get(client);
    return known != null && known.connection != connection;
  }

  /** The message that a client handed over before under this identifier. */
  synchronized Optional<Transit.Taking> of(String client, int packetId) {
    Client known = clients.get(client);
    return Optional.ofNullable(known == null ? null : known.taken.get(packetId));
  }

  /** A client handed over a message. */
  synchronized void add(String client, int packetId, Transit.Taking taking) {
    Client known = clients.get(client);
    if (known != null) {
      known.taken.remove(packetId);
      known.taken.put(packetId, taking);
    }
  }
}
