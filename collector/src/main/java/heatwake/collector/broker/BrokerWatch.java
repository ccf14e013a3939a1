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
  private final Set<String> connected = ConcurrentHashMap.newKeySet();

  /** Ends a client's connection; set once the broker is up. */
  private volatile Consumer<String> disconnect = client -> {};

  /** Told what was refused and to whom. */
  private volatile BrokerEvents events = BrokerEvents.UNHEARD;

  BrokerWatch(Optional<BrokerUsers> users, BrokerLimits limits) {
    this.users = users;
    this.limits = limits;
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
    events.refused(
        "client "
            + Excerpt.of(clientId)
            + " with user "
            + Excerpt.of(user)
            + (users.get().knows(user)
                ? ": wrong password"
                : ": no such user in the file of --broker-users"));
    return false;
  }

  /** A client came without user or password; where users are named, the broker turns it away. */
  void cameWithoutPassword(String client) {
    if (users.isPresent()) {
      events.refused("client " + client + ": no user and password given");
    }
  }

  /** A client speaks a version of MQTT that the broker does not. */
  void refusedVersion(String client, int level) {
    events.refused(
        "client " + client + ": speaks MQTT " + level + "; set it to MQTT 3.1.1 (version 4)");
  }

  /** A client sends more than it may. */
  void slowedDown(String client) {
    events.flooded(
        "client "
            + client
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
      events.refused(
          "client " + Excerpt.of(client) + ": " + limits.clients() + " are connected already");
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
    events.failed("the broker stumbled: " + fault.getMessage());
  }
}
