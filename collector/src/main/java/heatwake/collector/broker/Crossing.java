package heatwake.collector.broker;

import heatwake.collector.probe.MessageMark;
import io.netty.buffer.ByteBufUtil;
import io.netty.channel.ChannelDuplexHandler;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelPromise;
import io.netty.handler.codec.mqtt.MqttConnAckMessage;
import io.netty.handler.codec.mqtt.MqttConnectMessage;
import io.netty.handler.codec.mqtt.MqttConnectReturnCode;
import io.netty.handler.codec.mqtt.MqttFixedHeader;
import io.netty.handler.codec.mqtt.MqttMessage;
import io.netty.handler.codec.mqtt.MqttMessageIdVariableHeader;
import io.netty.handler.codec.mqtt.MqttMessageType;
import io.netty.handler.codec.mqtt.MqttPublishMessage;
import io.netty.handler.codec.mqtt.MqttQoS;
import io.netty.handler.codec.mqtt.MqttSubscribeMessage;
import io.netty.handler.codec.mqtt.MqttTopicSubscription;
import io.netty.util.ReferenceCountUtil;
import java.util.Optional;

/**
 * One client's connection, at the door of the broker: sees what is handed to it and what it hands
 * to our own sources, holds its acknowledgements back until the message is on disk, keeps
 * everything out that it may no longer acknowledge, and gives it what is sent once more but never
 * came as if it were sent for the first time.
 */
final class Crossing extends ChannelDuplexHandler {
  /** No client id holds it (MQTT 3.1.1, 1.5.3-2). */
  private static final String NOT_A_NAME = "\0";

  private final Transit transit;
  private final TakenMessages taken;
  private final Turns turns;

  /**
   * The client's id; of one without, which has no session beyond its connection, the connection's.
   */
  private String client = "";

  private boolean nameless;
  private boolean clean;
  private boolean ours;

  Crossing(Transit transit, TakenMessages taken, Turns turns) {
    this.transit = transit;
    this.taken = taken;
    this.turns = turns;
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object message) {
    if (message instanceof MqttMessage mqtt && mqtt.decoderResult().isFailure()) {
      context.fireChannelRead(message);
    } else if (message instanceof MqttConnectMessage connect) {
      connect(context, connect);
    } else if (message instanceof MqttPublishMessage publish && !ours) {
      publish(context, publish);
    } else {
      if (ours) {
        heard((MqttMessage) message);
      }
      context.fireChannelRead(message);
    }
  }

  private void connect(ChannelHandlerContext context, MqttConnectMessage connect) {
    String named = connect.payload().clientIdentifier();
    nameless = named == null || named.isEmpty();
    client = nameless ? NOT_A_NAME + context.channel().id().asLongText() : named;
    clean = connect.variableHeader().isCleanSession();
    ours = transit.isOurs(client);
    if (ours || transit.isOpen()) {
      context.fireChannelRead(connect);
    } else {
      // Without an answer; the connection ends with the broker.
      ReferenceCountUtil.release(connect);
    }
  }

  private void publish(ChannelHandlerContext context, MqttPublishMessage publish) {
    if (publish.fixedHeader().qosLevel() != MqttQoS.AT_MOST_ONCE) {
      publishForAnswer(context, publish);
    } else if (transit.isOpen()) {
      context.fireChannelRead(asNew(publish));
    } else {
      ReferenceCountUtil.release(publish);
    }
  }

  private void publishForAnswer(ChannelHandlerContext context, MqttPublishMessage publish) {
    int packetId = publish.variableHeader().packetId();
    Transit.Content content = content(publish);
    boolean again = publish.fixedHeader().isDup();
    Optional<Transit.Taking> underWay =
        again
            ? taken.of(client, packetId).filter(one -> one.content().equals(content))
            : Optional.empty();
    if (underWay.isPresent()) {
      ReferenceCountUtil.release(publish);
      MqttMessage answer = answer(publish.fixedHeader().qosLevel(), packetId);
      transit.answer(underWay.get(), () -> send(context, answer));
      return;
    }
    Optional<Transit.Taking> taking =
        transit.take(content, new Handover(client, taken.sessions(client), packetId, again));
    if (taking.isPresent()) {
      taken.add(client, packetId, taking.get());
      context.fireChannelRead(asNew(publish));
    } else {
      ReferenceCountUtil.release(publish);
    }
  }

  /** What the broker would say. */
  private static MqttMessage answer(MqttQoS quality, int packetId) {
    MqttMessageType type =
        quality == MqttQoS.AT_LEAST_ONCE ? MqttMessageType.PUBACK : MqttMessageType.PUBREC;
    return new MqttMessage(
        new MqttFixedHeader(type, false, MqttQoS.AT_MOST_ONCE, false, 0),
        MqttMessageIdVariableHeader.from(packetId));
  }

  private static ChannelFuture send(ChannelHandlerContext context, MqttMessage answer) {
    return context.writeAndFlush(answer).addListener(ChannelFutureListener.CLOSE_ON_FAILURE);
  }

  private static Transit.Content content(MqttPublishMessage publish) {
    String topic = publish.variableHeader().topicName();
    return new Transit.Content(
        topic, MessageMark.digest(topic, ByteBufUtil.getBytes(publish.payload())));
  }

  /**
   * The broker's library (0.17) stumbles over whatever is marked as a duplicate: it neither
   * delivers nor acknowledges it, so that a probe would send it for ever.
   */
  private static MqttPublishMessage asNew(MqttPublishMessage publish) {
    MqttFixedHeader header = publish.fixedHeader();
    return header.isDup()
        ? new MqttPublishMessage(
            new MqttFixedHeader(
                MqttMessageType.PUBLISH,
                false,
                header.qosLevel(),
                header.isRetain(),
                header.remainingLength()),
            publish.variableHeader(),
            publish.payload())
        : publish;
  }

  /** What one of our own sources says. */
  private void heard(MqttMessage message) {
    if (message instanceof MqttSubscribeMessage subscribe) {
      transit.subscribed(
          client,
          subscribe.payload().topicSubscriptions().stream()
              .map(MqttTopicSubscription::topicFilter)
              .toList());
    } else if (message.fixedHeader().messageType() == MqttMessageType.PUBACK) {
      transit.acknowledged(
          client, ((MqttMessageIdVariableHeader) message.variableHeader()).messageId());
    }
  }

  @Override
  public void channelInactive(ChannelHandlerContext context) {
    context.fireChannelInactive();
    turns.ended(client, context.channel());
    if (nameless) {
      taken.forget(client);
    }
  }

  @Override
  public void write(ChannelHandlerContext context, Object message, ChannelPromise promise) {
    if (message instanceof MqttConnAckMessage answer) {
      ChannelFuture unused =
          promise.addListener(sentOrNot -> turns.answered(client, context.channel()));
      if (answer.variableHeader().connectReturnCode()
          == MqttConnectReturnCode.CONNECTION_ACCEPTED) {
        letIn();
      }
    }
    // What the broker had kept from before is nobody's who waits.
    if (ours
        && message instanceof MqttPublishMessage publish
        && publish.fixedHeader().qosLevel() != MqttQoS.AT_MOST_ONCE
        && !publish.fixedHeader().isRetain()) {
      transit.handed(client, publish.variableHeader().packetId(), content(publish));
    }
    Optional<Transit.Taking> answered =
        !ours && message instanceof MqttMessage mqtt ? answered(mqtt) : Optional.empty();
    if (answered.isPresent()) {
      // For the broker it is said; it goes out when the message is safe.
      promise.setSuccess();
      transit.answer(answered.get(), () -> send(context, (MqttMessage) message));
    } else {
      ChannelFuture unused = context.write(message, promise);
    }
  }

  private void letIn() {
    if (clean) {
      taken.letInAnew(client);
    } else {
      taken.letIn(client);
    }
  }

  /** The message of which the broker says that it has it. */
  private Optional<Transit.Taking> answered(MqttMessage message) {
    MqttMessageType type = message.fixedHeader().messageType();
    return type == MqttMessageType.PUBACK || type == MqttMessageType.PUBREC
        ? taken.of(client, ((MqttMessageIdVariableHeader) message.variableHeader()).messageId())
        : Optional.empty();
  }
}
