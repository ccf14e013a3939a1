package heatwake.collector.broker;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.FixedRecvByteBufAllocator;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Puts a {@link SenderPace} into each connection of our brokers. The broker's library lets nobody
 * near its connections; this is the way that Netty, the library below it, provides: an extension
 * found by name in {@code META-INF/services}, once a system property allows extensions. Public only
 * because Netty makes it.
 */
public final class BrokerConnections extends ChannelInitializerExtension {
  /**
   * Bytes read at once: no more than can wait for a slow turn, so that a client that is slowed down
   * is still read often enough to be known alive.
   */
  private static final int BYTES_AT_ONCE = 4096;

  /** Name of the broker's own handler, the last in a connection. */
  private static final String BROKER = "handler";

  private static final Map<Integer, BrokerWatch> BY_PORT = new ConcurrentHashMap<>();

  /**
   * Looks after the broker that is about to listen on a port. Netty asks for the property once, at
   * the first listener of the process; nothing but our brokers listens by Netty.
   *
   * @return false if another broker of this process is there
   */
  static boolean watch(int port, BrokerWatch watch) {
    System.setProperty(EXTENSIONS_SYSTEM_PROPERTY, "serviceload");
    return BY_PORT.putIfAbsent(port, watch) == null;
  }

  /** Forgets a broker that listens no more. */
  static void forget(int port, BrokerWatch watch) {
    BY_PORT.remove(port, watch);
  }

  @Override
  public void postInitializeServerChildChannel(Channel connection) {
    SocketAddress local = connection.localAddress();
    BrokerWatch watch =
        local instanceof InetSocketAddress address ? BY_PORT.get(address.getPort()) : null;
    if (watch == null) {
      return;
    }
    connection.config().setRecvByteBufAllocator(new FixedRecvByteBufAllocator(BYTES_AT_ONCE));
    // Runs after the broker's own, which stands before it.
    connection
        .pipeline()
        .addLast(
            new ChannelInitializer<>() {
              @Override
              protected void initChannel(Channel channel) {
                channel.pipeline().addBefore(BROKER, "pace", new SenderPace(watch));
                channel.pipeline().addBefore(BROKER, "crossing", watch.crossing());
              }
            });
  }
}
