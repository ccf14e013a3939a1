package heatwake.collector.broker;

import heatwake.collector.frame.Excerpt;
import io.moquette.broker.security.IAuthenticator;
import io.moquette.broker.security.IAuthorizatorPolicy;
import io.moquette.broker.subscriptions.Topic;
import io.moquette.interception.AbstractInterceptHandler;
import io.moquette.interception.messages.InterceptConnectMessage;
import io.moquette.interception.messages.InterceptConnectionLostMessage;
import io.moquette.interception.messages.InterceptDisconnectMessage;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/** Decides who gets in and how much a client may send. */
final class BrokerWatch extends AbstractInterceptHandler
    implements IAuthenticator, IAuthorizatorPolicy {
  private final Optional<BrokerUsers> users;
  private final BrokerLimits limits;
  private final Set<String> connected = ConcurrentHashMap.newKeySet();
  private final Map<String, Allowance> allowances = new ConcurrentHashMap<>();

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
    events.refused(
        "client " + Excerpt.of(clientId) + " with user " + Excerpt.of(user) + ": wrong password");
    return false;
  }

  @Override
  public boolean canWrite(Topic topic, String user, String client) {
    boolean within =
        allowances.computeIfAbsent(client, one -> new Allowance(limits.messagesPerS())).take();
    if (!within) {
      events.flooded(
          "client "
              + Excerpt.of(client)
              + " sends more than "
              + limits.messagesPerS()
              + " messages a second; the rest is dropped");
    }
    return within;
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
    allowances.remove(client);
  }

  @Override
  public String getID() {
    return "heatwake";
  }

  @Override
  public void onSessionLoopError(Throwable fault) {
    events.failed("the broker stumbled: " + fault.getMessage());
  }

  /** A bucket that refills evenly and holds ten seconds' worth. */
  private static final class Allowance {
    private static final int SECONDS_HELD = 10;

    private final double perNano;
    private final double most;
    private double left;
    private long filledAtNanos = System.nanoTime();

    Allowance(int perS) {
      perNano = perS / 1e9;
      most = (double) perS * SECONDS_HELD;
      left = most;
    }

    synchronized boolean take() {
      long now = System.nanoTime();
      left = Math.min(most, left + (now - filledAtNanos) * perNano);
      filledAtNanos = now;
      if (left < 1) {
        return false;
      }
      left--;
      return true;
    }
  }
}
