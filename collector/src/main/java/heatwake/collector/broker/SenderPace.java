package heatwake.collector.broker;

import heatwake.collector.frame.Excerpt;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.handler.codec.mqtt.MqttConnectMessage;
import io.netty.handler.codec.mqtt.MqttPublishMessage;
import io.netty.handler.codec.mqtt.MqttVersion;
import io.netty.util.ReferenceCountUtil;
import io.netty.util.concurrent.ScheduledFuture;
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
 * without asking {@link BrokerWatch}.
 */
final class SenderPace extends ChannelInboundHandlerAdapter {
  private final BrokerWatch watch;
  private final Allowance allowance;

  /** Of one buffer that was read; in the order they came. */
  private final Queue<Object> waiting = new ArrayDeque<>();

  private String client = "";

  SenderPace(BrokerWatch watch) {
    this.watch = watch;
    this.allowance = new Allowance(watch.limits().messagesPerS());
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object message) {
    if (message instanceof MqttConnectMessage connect && connect.decoderResult().isSuccess()) {
      arrived(context, connect);
    }
    if (waiting.isEmpty() && mayPass(message)) {
      context.fireChannelRead(message);
      return;
    }
    if (waiting.isEmpty()) {
      watch.slowedDown(client);
      context.channel().config().setAutoRead(false);
      passLater(context);
    }
    waiting.add(message);
  }

  private void arrived(ChannelHandlerContext context, MqttConnectMessage connect) {
    String named = connect.payload().clientIdentifier();
    client =
        named == null || named.isEmpty()
            ? "at " + context.channel().remoteAddress()
            : Excerpt.of(named);
    int version = connect.variableHeader().version();
    if (version > MqttVersion.MQTT_3_1_1.protocolLevel()) {
      watch.refusedVersion(client, version);
    } else if (!connect.variableHeader().hasUserName() || !connect.variableHeader().hasPassword()) {
      watch.cameWithoutPassword(client);
    }
  }

  private boolean mayPass(Object message) {
    return !(message instanceof MqttPublishMessage) || allowance.take();
  }

  private void passLater(ChannelHandlerContext context) {
    ScheduledFuture<?> unused =
        context
            .executor()
            .schedule(() -> pass(context), allowance.nanosToNext(), TimeUnit.NANOSECONDS);
  }

  private void pass(ChannelHandlerContext context) {
    if (context.isRemoved()) {
      return;
    }
    boolean passed = false;
    while (!waiting.isEmpty() && mayPass(waiting.peek())) {
      context.fireChannelRead(waiting.remove());
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
