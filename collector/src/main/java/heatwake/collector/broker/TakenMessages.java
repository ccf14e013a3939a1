package heatwake.collector.broker;

import heatwake.collector.probe.Latest;
import java.util.Map;
import java.util.Optional;

/**
 * The messages that clients handed to the broker and that are not acknowledged to them, to know
 * those that they send once more meanwhile.
 */
final class TakenMessages {
  /** More than can be connected. */
  static final int MOST_CLIENTS = 200;

  /** More than a probe leaves unacknowledged. */
  private static final int MOST_OF_A_CLIENT = 1024;

  private final Map<String, Client> clients = new Latest<>(MOST_CLIENTS);

  /** What one client handed over, by packet identifier. */
  private static final class Client {
    private int sessions;
    private final Map<Integer, Transit.Taking> taken = new Latest<>(MOST_OF_A_CLIENT);
  }

  /** A client was let in, to go on with its session. */
  synchronized void letIn(String client) {
    Client known = clients.remove(client);
    clients.put(client, known == null ? new Client() : known);
  }

  /** A client was let in, to begin a session anew. */
  synchronized void letInAnew(String client) {
    letIn(client);
    clients.get(client).sessions++;
  }

  /** How many sessions a client has begun anew. */
  synchronized int sessions(String client) {
    Client known = clients.get(client);
    return known == null ? 0 : known.sessions;
  }

  /** A client that had no id has gone, and cannot come back as itself. */
  synchronized void forget(String client) {
    clients.remove(client);
  }

  /** The message that a client handed over under this identifier, unless it is acknowledged. */
  synchronized Optional<Transit.Taking> of(String client, int packetId) {
    Client known = clients.get(client);
    return Optional.ofNullable(known == null ? null : known.taken.get(packetId))
        .filter(taking -> !taking.isAcknowledged());
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
