package heatwake.collector.broker;

import java.util.Set;

/**
 * Who may come in when. Until the recorder is ready only its own sources may: what a probe sent
 * before anybody had subscribed would be acknowledged and lost. The others wait for their answer.
 */
final class Admission {
  private final Set<String> first;
  private volatile boolean open;

  private Admission(Set<String> first, boolean open) {
    this.first = Set.copyOf(first);
    this.open = open;
  }

  /** Everybody at once. */
  static Admission ofAll() {
    return new Admission(Set.of(), true);
  }

  /** These clients at once, everybody else from {@link #letAllIn} on. */
  static Admission firstOf(Set<String> clients) {
    return new Admission(clients, false);
  }

  /** The clients that may come in at once: our own sources. */
  Set<String> first() {
    return first;
  }

  void letAllIn() {
    open = true;
  }

  boolean isOpenTo(String client) {
    return open || first.contains(client);
  }
}
