package heatwake.collector.broker;

import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.handler.codec.mqtt.MqttConnectMessage;
import io.netty.handler.codec.mqtt.MqttConnectReturnCode;
import io.netty.handler.codec.mqtt.MqttMessageBuilders;
import io.netty.handler.codec.mqtt.MqttPublishMessage;
import io.netty.handler.codec.mqtt.MqttVersion;
import io.netty.util.ReferenceCountUtil;
import io.netty.util.concurrent.ScheduledFuture;
import java.net.InetSocketAddress;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.TimeUnit;

/**
 * One client's connection, between the wire and the broker. A client that publishes faster than it
 * may is slowed down: what it sent waits here, and nothing more is read from it until its turn
 * comes. So its own acknowledgements come later, and nothing is dropped that it would then send
 * again for ever (MQTT 3.1.1 knows no way to say no to one message, 3.3.5).
 *
 * <p>It also sees who comes without a user or in another language, whom the broker turns away
 * without asking {@link BrokerWatch}, and lets clients wait that come before the recorder is ready
 * or whose connection before has not ended.
 */
final class SenderPace extends ChannelInboundHandlerAdapter {
  /** How often to look whether a client may come in. */
  private static final long UNTIL_OPEN_NANOS = TimeUnit.MILLISECONDS.toNanos(20);

  private final BrokerWatch watch;
  private final Allowance allowance;

  /** Of one buffer that was read; in the order they came. */
  private final Queue<Object> waiting = new ArrayDeque<>();

  private String client = "";
  private boolean turnedAway;

  SenderPace(BrokerWatch watch) {
    this.watch = watch;
    this.allowance = new Allowance(watch.limits().messagesPerS());
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object message) {
    if (turnedAway) {
      ReferenceCountUtil.release(message);
      return;
    }
    if (message instanceof MqttConnectMessage connect && isNamed(connect)) {
      watch.turns().arrives(clientId(connect), context.channel());
    }
    boolean first = waiting.isEmpty();
    if (first && mayPass(context, message)) {
      handOver(context, message);
      return;
    }
    waiting.add(message);
    if (first) {
      if (message instanceof MqttPublishMessage) {
        watch.slowedDown(client);
      }
      context.channel().config().setAutoRead(false);
      passLater(context);
    }
  }

  private void handOver(ChannelHandlerContext context, Object message) {
    if (!(message instanceof MqttConnectMessage connect) || connect.decoderResult().isFailure()) {
      context.fireChannelRead(message);
      return;
    }
    String named = clientId(connect);
    client = named.isEmpty() ? nameless(context) : BrokerWatch.name(named);
    if (named.isEmpty() && !connect.variableHeader().isCleanSession()) {
      refuseNameless(context, connect);
      return;
    }
    arrived(connect);
    watch.handingOver(client);
    try {
      context.fireChannelRead(message);
    } finally {
      watch.handedOver();
    }
  }

  private static String clientId(MqttConnectMessage connect) {
    String named = connect.payload().clientIdentifier();
    return named == null ? "" : named;
  }

  private static boolean isNamed(MqttConnectMessage connect) {
    return connect.decoderResult().isSuccess() && !clientId(connect).isEmpty();
  }

  /** The port is another one at each attempt, and says nothing. */
  private static String nameless(ChannelHandlerContext context) {
    return context.channel().remoteAddress() instanceof InetSocketAddress address
        ? "a client without id at " + address.getAddress().getHostAddress()
        : "a client without id";
  }

  /** MQTT 3.1.1, 3.1.3-8: return code 2, identifier rejected, and the connection is closed. */
  private void refuseNameless(ChannelHandlerContext context, MqttConnectMessage connect) {
    turnedAway = true;
    ReferenceCountUtil.release(connect);
    watch.namelessSession(client);
    context
        .writeAndFlush(
            MqttMessageBuilders.connAck()
                .returnCode(MqttConnectReturnCode.CONNECTION_REFUSED_IDENTIFIER_REJECTED)
                .build())
        .addListener(ChannelFutureListener.CLOSE);
  }

  private void arrived(MqttConnectMessage connect) {
    int version = connect.variableHeader().version();
    if (version > MqttVersion.MQTT_3_1_1.protocolLevel()) {
      watch.refusedVersion(client, version);
    } else if (!connect.variableHeader().hasUserName() || !connect.variableHeader().hasPassword()) {
      watch.cameWithoutPassword(client);
    }
  }

  private boolean mayPass(ChannelHandlerContext context, Object message) {
    if (message instanceof MqttConnectMessage connect && connect.decoderResult().isSuccess()) {
      return watch.isOpenTo(clientId(connect))
          && (!isNamed(connect) || watch.turns().enters(clientId(connect), context.channel()));
    }
    return !(message instanceof MqttPublishMessage) || allowance.take();
  }

  private void passLater(ChannelHandlerContext context) {
    long pauseNanos =
        waiting.peek() instanceof MqttPublishMessage ? allowance.nanosToNext() : UNTIL_OPEN_NANOS;
    ScheduledFuture<?> unused =
        context.executor().schedule(() -> pass(context), pauseNanos, TimeUnit.NANOSECONDS);
  }

  private void pass(ChannelHandlerContext context) {
    if (context.isRemoved()) {
      return;
    }
    boolean passed = false;
    while (!waiting.isEmpty() && mayPass(context, waiting.peek())) {
      handOver(context, waiting.remove());
      passed = true;
    }
    if (passed) {
      context.fireChannelReadComplete();
    }
    if (waiting.isEmpty()) {
      context.channel().config().setAutoRead(true);
    } else {
      passLater(context);
    }
  }

  @Override
  public void handlerRemoved(ChannelHandlerContext context) {
    waiting.forEach(ReferenceCountUtil::release);
    waiting.clear();
  }
}
