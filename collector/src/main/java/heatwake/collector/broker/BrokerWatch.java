package heatwake.collector.broker;

import heatwake.collector.frame.Excerpt;
import io.moquette.broker.security.IAuthenticator;
import io.moquette.broker.security.IAuthorizatorPolicy;
import io.moquette.broker.subscriptions.Topic;
import io.moquette.interception.AbstractInterceptHandler;
import io.moquette.interception.messages.InterceptConnectMessage;
import io.moquette.interception.messages.InterceptConnectionLostMessage;
import io.moquette.interception.messages.InterceptDisconnectMessage;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/** Decides who gets in, and tells of whom it keeps out or slows down. */
final class BrokerWatch extends AbstractInterceptHandler
    implements IAuthenticator, IAuthorizatorPolicy {
  private final Optional<BrokerUsers> users;
  private final BrokerLimits limits;
  private final Admission admission;
  private final Transit transit;
  private final TakenMessages taken = new TakenMessages();
  private final Turns turns = new Turns();

  /**
   * The client that is being asked about. The broker's library asks within the call that hands it
   * the client's words, and under a name that it makes up where the client has none.
   */
  private final ThreadLocal<String> arriving = new ThreadLocal<>();

  private final Set<String> connected = ConcurrentHashMap.newKeySet();

  /** Ends a client's connection; set once the broker is up. */
  private volatile Consumer<String> disconnect = client -> {};

  /** Told what was refused and to whom. */
  private volatile BrokerEvents events = BrokerEvents.UNHEARD;

  private final Runnable stumbled;

  /**
   * Stands at the door of a server.
   *
   * @param stumbled what to do when it can no longer serve all its clients
   */
  BrokerWatch(
      Optional<BrokerUsers> users, BrokerLimits limits, Admission admission, Runnable stumbled) {
    this.stumbled = stumbled;
    this.users = users;
    this.admission = admission;
    this.limits = limits;
    this.transit = new Transit(admission.first());
  }

  /** What stands at the door of the broker in a new connection. */
  Crossing crossing() {
    return new Crossing(transit, taken, turns);
  }

  /** What the broker took and our sources have not acknowledged. */
  Transit transit() {
    return transit;
  }

  /** Which of a client's connections is in. */
  Turns turns() {
    return turns;
  }

  void disconnectBy(Consumer<String> how) {
    disconnect = how;
  }

  void reportTo(BrokerEvents target) {
    events = target;
  }

  @Override
  public boolean checkValid(String clientId, String user, byte[] password) {
    if (users.isEmpty() || users.get().admit(user, password)) {
      return true;
    }
    // The client is told the same either way, so that nobody can find out names by trying.
    String client = arriving.get() == null ? name(clientId) : arriving.get();
    events.refused(
        client + " with user " + Excerpt.of(user),
        users.get().knows(user) ? "wrong password" : "no such user in the file of --broker-users");
    return false;
  }

  /** A client's wish to connect is about to be handed to the broker, on this thread. */
  void handingOver(String client) {
    arriving.set(client);
  }

  /** The broker has answered it. */
  void handedOver() {
    arriving.remove();
  }

  /** Whether a client may be answered now. */
  boolean isOpenTo(String clientId) {
    return admission.isOpenTo(clientId);
  }

  /** From here on everybody may come in. */
  void letAllIn() {
    admission.letAllIn();
  }

  /** What a person knows a client by. */
  static String name(String clientId) {
    return "client " + Excerpt.of(clientId);
  }

  /** A client came without user or password; where users are named, the broker turns it away. */
  void cameWithoutPassword(String client) {
    if (users.isPresent()) {
      events.refused(client, "no user and password given");
    }
  }

  /** A client wants a session kept, but has no name by which to know it again. */
  void namelessSession(String client) {
    events.refused(
        client, "wants its session kept, but has no client id; give it one, or a clean session");
  }

  /** A client speaks a version of MQTT that the broker does not. */
  void refusedVersion(String client, int level) {
    events.refused(client, "speaks MQTT " + level + "; set it to MQTT 3.1.1 (version 4)");
  }

  /** A client sends more than it may. */
  void slowedDown(String client) {
    events.flooded(
        client
            + " sends more than "
            + limits.messagesPerS()
            + " messages a second; it is slowed down");
  }

  BrokerLimits limits() {
    return limits;
  }

  @Override
  public boolean canWrite(Topic topic, String user, String client) {
    return true;
  }

  @Override
  public boolean canRead(Topic topic, String user, String client) {
    return true;
  }

  @Override
  public void onConnect(InterceptConnectMessage message) {
    String client = message.getClientID();
    connected.add(client);
    if (connected.size() > limits.clients()) {
      events.refused(name(client), limits.clients() + " are connected already");
      disconnect.accept(client);
    }
  }

  @Override
  public void onDisconnect(InterceptDisconnectMessage message) {
    gone(message.getClientID());
  }

  @Override
  public void onConnectionLost(InterceptConnectionLostMessage message) {
    gone(message.getClientID());
  }

  private void gone(String client) {
    connected.remove(client);
  }

  @Override
  public String getID() {
    return "heatwake";
  }

  @Override
  public void onSessionLoopError(Throwable fault) {
    events.failed("the broker stumbled and is started again: " + fault.getMessage());
    stumbled.run();
  }
}
