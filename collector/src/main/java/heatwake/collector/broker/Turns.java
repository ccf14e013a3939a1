package heatwake.collector.broker;

import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The connections of a client follow each other: the newest one is handed to the broker when the
 * one before it has been answered, has ended and is forgotten there. Of several that wait only the
 * newest comes in.
 *
 * <p>A client may open a second connection while the broker still answers the first, as one does
 * that lost patience while the recorder started. The broker's library (0.17) handles the end of the
 * first and the beginning of the second on different threads, and where these overtake each other
 * the thread that serves the client dies, so that it and others are never heard again.
 */
final class Turns {
  /** What the library does on other threads after an answer and an end is done by then; ours. */
  private static final long SETTLING_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  /** A connection that has ended without an answer gets none after this; ours. */
  private static final long UNANSWERED_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final Map<String, Client> clients = new HashMap<>();

  /** The connections of one client. */
  private static final class Client {
    private Channel newest;

    /** The one that was handed over last; null if none was. */
    private Stay stay;

    private boolean isGone() {
      return !newest.isActive() && (stay == null || stay.isOver());
    }
  }

  /** A connection that was handed to the broker. */
  private static final class Stay {
    private final Channel channel;
    private boolean answered;
    private boolean ended;
    private long changedNanos = System.nanoTime();

    private Stay(Channel channel) {
      this.channel = channel;
    }

    private boolean isOver() {
      long since = System.nanoTime() - changedNanos;
      return ended && since > (answered ? SETTLING_NANOS : UNANSWERED_NANOS);
    }
  }

  /** A client asks by a connection to be let in. */
  synchronized void arrives(String client, Channel channel) {
    clients.values().removeIf(Client::isGone);
    clients.computeIfAbsent(client, first -> new Client()).newest = channel;
  }

  /**
   * Whether a connection may be handed over now; notes that it is. One that a newer one has
   * overtaken is closed, and so is the one before it.
   */
  synchronized boolean enters(String client, Channel channel) {
    Client known = clients.get(client);
    if (known == null || known.newest != channel) {
      ChannelFuture unused = channel.close();
      return false;
    }
    if (known.stay != null && !known.stay.isOver()) {
      ChannelFuture unused = known.stay.channel.close();
      return false;
    }
    known.stay = new Stay(channel);
    return true;
  }

  /** The answer to a client that was handed over has been sent, or could not be. */
  synchronized void answered(String client, Channel channel) {
    Client known = clients.get(client);
    if (known != null && known.stay != null && known.stay.channel == channel) {
      known.stay.answered = true;
      known.stay.changedNanos = System.nanoTime();
    }
  }

  /** A connection has ended, and the broker has been told. */
  synchronized void ended(String client, Channel channel) {
    Client known = clients.get(client);
    if (known != null && known.stay != null && known.stay.channel == channel) {
      known.stay.ended = true;
      known.stay.changedNanos = System.nanoTime();
    }
  }
}
