package heatwake.collector.broker;

import heatwake.analysis.series.EventKind;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.KnownMessages;
import heatwake.collector.probe.Latest;
import heatwake.collector.probe.MessageMark;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The intake of one of our own sources that reads from the broker inside. Our session there ends
 * with the process, so marks of it would tell nothing later; what the source delivers is marked by
 * which client handed it to the broker and how, and what a client sends once more though it was
 * stored is not stored again.
 *
 * <p>Decided for each source, not at the broker's door: of two that hear the same client, one may
 * have stored what the other had not when the recorder was killed.
 */
final class SenderMarks implements Intake {
  private static final long PACKET_ID = 0xFFFF;

  private final Intake target;
  private final Handovers handovers;

  /** By the client's part of an identifier. */
  private final Map<Long, Sender> senders = new Latest<>(TakenMessages.MOST_CLIENTS);

  /** Where the marks are kept; empty until the first message. */
  private String session = "";

  /** Messages that were marked. */
  private long count;

  /** What is on its way through the broker. */
  interface Handovers {
    /**
     * How a message was handed to the broker; nothing if that is not known.
     *
     * @param client id of our own source
     * @param packetId identifier of our own source's copy
     * @param digest of the message
     */
    Optional<Handover> of(String client, int packetId, long digest);
  }

  /** What came from one client. */
  private static final class Sender {
    private final KnownMessages known = new KnownMessages(MessageMark.KEPT);
    private int sessions;

    private void isIn(int session) {
      if (session < sessions) {
        // A server in place of one that stumbled counts anew.
        sessions = session - 1;
      }
      for (; sessions < session; sessions++) {
        known.sessionBegan();
      }
    }
  }

  /** An intake that hands on to another what it has marked. */
  SenderMarks(Intake target, Handovers handovers) {
    this.target = target;
    this.handovers = handovers;
  }

  @Override
  public void deliver(Delivery delivery) throws InterruptedException {
    Optional<MessageMark> copy = delivery.mark();
    Optional<Handover> handover =
        copy.flatMap(
            mark ->
                handovers.of(
                    MqttSources.client(mark.session()), (int) mark.identifier(), mark.digest()));
    target.deliver(handover.isPresent() ? marked(delivery, copy.get(), handover.get()) : delivery);
  }

  private synchronized Delivery marked(Delivery delivery, MessageMark copy, Handover handover) {
    recall(copy.session() + " from its clients");
    long client = MessageMark.digest(handover.client()) & ~PACKET_ID;
    long identifier = client | handover.packetId();
    Sender sender = sender(client);
    sender.isIn(handover.sessions());
    KnownMessages known = sender.known;
    if (handover.again() && known.tells(identifier, copy.digest())) {
      // Stored, or before this one on its way to the disk: what is owed is the acknowledgement.
      return new Delivery(List.of(), delivery.whenDurable());
    }
    known.add(known.count(), identifier, copy.digest());
    MessageMark mark = new MessageMark(session, count++, identifier, copy.digest());
    return new Delivery(delivery.readings(), delivery.whenDurable(), Optional.of(mark));
  }

  /** Makes known what was stored before our start. */
  private void recall(String name) {
    if (session.equals(name)) {
      return;
    }
    session = name;
    for (MessageMark mark : target.delivered(name)) {
      KnownMessages known = sender(mark.identifier() & ~PACKET_ID).known;
      known.add(known.count(), mark.identifier(), mark.digest());
      count = mark.number() + 1;
    }
  }

  private Sender sender(long client) {
    Sender before = senders.remove(client);
    Sender sender = before == null ? new Sender() : before;
    // Last in the map is who spoke last.
    senders.put(client, sender);
    return sender;
  }

  @Override
  public long nowMs() {
    return target.nowMs();
  }

  @Override
  public void happened(EventKind kind, String subject, String text) {
    target.happened(kind, subject, text);
  }

  @Override
  public void began(EventKind kind, String subject, String text) {
    target.began(kind, subject, text);
  }

  @Override
  public void ended(EventKind kind, String subject) {
    target.ended(kind, subject);
  }

  @Override
  public List<MessageMark> delivered(String name) {
    return target.delivered(name);
  }

  @Override
  public void sessionIsNew(String name) throws InterruptedException {
    target.sessionIsNew(name);
  }
}
