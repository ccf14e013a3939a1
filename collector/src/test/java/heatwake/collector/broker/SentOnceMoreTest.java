package heatwake.collector.broker;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.rig.SourceSpec;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * What a probe sends to the embedded broker once more, byte by byte as MQTT 3.1.1 has it (3.1, 3.3,
 * 3.4), and what the broker does when it is to take nothing more.
 */
@Timeout(60)
class SentOnceMoreTest {
  /** Type and length of an acknowledgement. */
  private static final int PUBACK = 0x4002;

  private static final int LEFT_BEHIND_TURNS = Integer.getInteger("heatwake.left-behind", 5);

  private final RememberingIntake intake = new RememberingIntake();

  private static SourceSpec.Mqtt spec(String url) {
    return new SourceSpec.Mqtt(
        "wifi", url, Optional.empty(), Optional.empty(), Optional.empty(), 3);
  }

  /** A probe that says exactly what it is told to. */
  private static final class Probe implements AutoCloseable {
    private static final int PATIENCE_MS = 5000;

    private final Socket socket;
    private final DataInputStream in;

    private Probe(EmbeddedBroker broker, String id) throws IOException {
      this(broker, id, id.isEmpty());
    }

    private Probe(EmbeddedBroker broker, String id, boolean clean) throws IOException {
      this(broker);
      connect(id, clean);
      byte[] answer = in.readNBytes(4);
      if (answer.length < 4) {
        throw new EOFException("no answer");
      }
      assertThat(answer).startsWith(0x20, 2).endsWith(0);
    }

    private Probe(EmbeddedBroker broker) throws IOException {
      socket = new Socket(InetAddress.getLoopbackAddress(), broker.port());
      socket.setSoTimeout(PATIENCE_MS);
      in = new DataInputStream(socket.getInputStream());
    }

    /** Asks to be let in and goes away without waiting for the answer. */
    private static void callAndLeave(EmbeddedBroker broker, String id) throws IOException {
      try (Probe impatient = new Probe(broker)) {
        impatient.connect(id, false);
      }
    }

    private void connect(String id, boolean clean) throws IOException {
      ByteArrayOutputStream body = new ByteArrayOutputStream();
      // Protocol name, level 4, flags (whether the session is a new one), keep alive 0.
      int flags = clean ? 2 : 0;
      body.writeBytes(new byte[] {0, 4, 'M', 'Q', 'T', 'T', 4, (byte) flags, 0, 0});
      text(body, id);
      send(0x10, body);
    }

    private static void text(ByteArrayOutputStream body, String text) {
      body.write(0);
      body.write(text.length());
      body.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
    }

    private void send(int type, ByteArrayOutputStream body) throws IOException {
      ByteArrayOutputStream packet = new ByteArrayOutputStream();
      packet.write(type);
      packet.write(body.size());
      packet.writeBytes(body.toByteArray());
      socket.getOutputStream().write(packet.toByteArray());
    }

    private void publish(int packetId, String payload, boolean again) throws IOException {
      publish("heron/in", packetId, payload, again);
    }

    private void publish(String topic, int packetId, String payload, boolean again)
        throws IOException {
      ByteArrayOutputStream body = new ByteArrayOutputStream();
      text(body, topic);
      body.write(packetId >> 8);
      body.write(packetId);
      body.writeBytes(payload.getBytes(StandardCharsets.US_ASCII));
      send(again ? 0x3A : 0x32, body);
    }

    private int acknowledgement() throws IOException {
      assertThat(in.readUnsignedShort()).isEqualTo(PUBACK);
      return in.readUnsignedShort();
    }

    private boolean isSilentFor(int ms) throws IOException {
      socket.setSoTimeout(ms);
      try {
        return in.read() < 0;
      } catch (SocketTimeoutException silent) {
        return true;
      } finally {
        socket.setSoTimeout(PATIENCE_MS);
      }
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }

  private static EmbeddedBroker brokerThatKnowsOurs() throws IOException {
    // The name of a session holds the broker's port, so this is chosen first.
    return brokerThatKnowsOurs(Mosquitto.freePort());
  }

  private static EmbeddedBroker brokerThatKnowsOurs(int port) {
    SourceSpec.Mqtt spec = spec("mqtt://127.0.0.1:" + port);
    Set<String> ours = Set.of(MqttSources.session(spec, "Heron Lane"));
    return EmbeddedBroker.startFor(ours, BrokerConfig.loopback(port));
  }

  /** Something that is done with a broker whose clients are all let in. */
  private interface WithBroker {
    void run(EmbeddedBroker broker) throws Exception;
  }

  private void withBroker(WithBroker what) throws Exception {
    withBroker(Mosquitto.freePort(), what);
  }

  private void withBroker(int port, WithBroker what) throws Exception {
    try (EmbeddedBroker broker = brokerThatKnowsOurs(port);
        ProbeSource source = source(broker)) {
      source.start(broker.knowingSenders(intake));
      broker.letAllIn();
      what.run(broker);
    }
  }

  private ProbeSource source(EmbeddedBroker broker) {
    return MqttSources.of(
        spec(broker.url()),
        List.of(Probes.topic(Channel.WATER_IN, "heron/in")),
        "Heron Lane",
        variable -> null);
  }

  /** A probe that sent it to a recorder that has ended, and got no acknowledgement. */
  @Test
  void whatNeverCameIsDelivered() throws Exception {
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0));
        ProbeSource source = source(broker)) {
      source.start(intake);
      try (Probe probe = new Probe(broker, "box")) {
        probe.publish(7, "20.5", true);
        assertThat(probe.acknowledgement()).isEqualTo(7);
        probe.publish(8, "21.5", false);
        assertThat(probe.acknowledgement()).isEqualTo(8);
      }
      Eventually.that("both", () -> intake.values(Channel.WATER_IN).size() == 2);
      assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 21.5);
    }
  }

  /** Its acknowledgement was lost with the connection. */
  @Test
  void whatCameBeforeIsDeliveredOnce() throws Exception {
    withBroker(
        broker -> {
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(7, "20.5", false);
            assertThat(probe.acknowledgement()).isEqualTo(7);
          }
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(7, "20.5", true);
            assertThat(probe.acknowledgement()).isEqualTo(7);
            probe.publish(7, "22.5", true);
            assertThat(probe.acknowledgement()).isEqualTo(7);
          }
        });
    assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 22.5);
  }

  /** Its acknowledgement was lost with the recorder: the marks are all that is left of that one. */
  @Test
  void whatIsOnDiskIsKnownToTheNextBroker() throws Exception {
    int port = Mosquitto.freePort();
    withBroker(
        port,
        broker -> {
          try (Probe box = new Probe(broker, "box");
              Probe other = new Probe(broker, "other")) {
            box.publish(7, "20.5", false);
            assertThat(box.acknowledgement()).isEqualTo(7);
            other.publish(8, "20.5", false);
            assertThat(other.acknowledgement()).isEqualTo(8);
          }
        });
    withBroker(
        port,
        broker -> {
          try (Probe box = new Probe(broker, "box")) {
            box.publish(7, "20.5", true);
            assertThat(box.acknowledgement()).isEqualTo(7);
            box.publish(8, "20.5", true);
            assertThat(box.acknowledgement()).as("another's identifier").isEqualTo(8);
            box.publish(9, "21.5", false);
            assertThat(box.acknowledgement()).isEqualTo(9);
          }
        });
    assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 20.5, 20.5, 21.5);
  }

  /**
   * A probe that gives its next message the lowest free identifier: what it sends once more may be
   * another message of the same words, which was never here, and must not be lost.
   */
  @Test
  void whereIdentifiersAreUsedAgainAtOnceNothingIsTakenForStored() throws Exception {
    withBroker(
        broker -> {
          try (Probe probe = new Probe(broker, "box")) {
            for (int i = 0; i < 2; i++) {
              probe.publish(1, "20.5", false);
              assertThat(probe.acknowledgement()).isEqualTo(1);
            }
          }
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(1, "20.5", true);
            assertThat(probe.acknowledgement()).isEqualTo(1);
          }
        });
    assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 20.5, 20.5);
  }

  /**
   * A probe that asks for a new session may count from one again. What it nevertheless sends once
   * more of the session before is told, as some send it; of an earlier one nothing is.
   */
  @Test
  void ofASessionBeforeTheLastNothingIsTakenForStored() throws Exception {
    withBroker(
        broker -> {
          try (Probe probe = new Probe(broker, "box", true)) {
            probe.publish(1, "20.5", false);
            assertThat(probe.acknowledgement()).isEqualTo(1);
          }
          try (Probe probe = new Probe(broker, "box", true)) {
            probe.publish(1, "20.5", true);
            assertThat(probe.acknowledgement()).isEqualTo(1);
            assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5);
          }
          try (Probe probe = new Probe(broker, "box", true)) {
            probe.publish(1, "20.5", true);
            assertThat(probe.acknowledgement()).isEqualTo(1);
          }
        });
    assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 20.5);
  }

  /** MQTT 3.1.1, 4.7.3-1: a topic has at least one character. */
  @Test
  void aTopicThatIsNoneCostsItsSenderTheConnectionAndNobodyElse() throws Exception {
    withBroker(
        broker -> {
          try (Probe strange = new Probe(broker, "strange");
              Probe sound = new Probe(broker, "sound")) {
            strange.publish("", 1, "20.5", false);
            assertThat(strange.isSilentFor(500)).isTrue();
            sound.publish(1, "21.5", false);
            assertThat(sound.acknowledgement()).isEqualTo(1);
          }
          Eventually.that("the sound one", () -> !intake.values(Channel.WATER_IN).isEmpty());
          broker.takeNoMore(Duration.ofMinutes(1));
        });
    assertThat(intake.values(Channel.WATER_IN)).containsExactly(21.5);
  }

  /** A probe that has its acknowledgement may forget the message, whatever happens to us then. */
  @Test
  void acknowledgedWhenOnDiskAndNotBefore() throws Exception {
    withBroker(
        broker -> {
          intake.holdBack();
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(7, "20.5", false);
            probe.publish("heron/unheard", 8, "1", false);
            assertThat(probe.acknowledgement()).as("nobody is to store it").isEqualTo(8);
            assertThat(probe.isSilentFor(500)).isTrue();
            Eventually.that("it came", () -> intake.values(Channel.WATER_IN).contains(20.5));
            intake.commit();
            assertThat(probe.acknowledgement()).isEqualTo(7);
          }
        });
  }

  /** Clients without an id are each their own (MQTT 3.1.1, 3.1.3-6), and number alike. */
  @Test
  void clientsWithoutAnIdAreNotTakenForOneAnother() throws Exception {
    withBroker(
        broker -> {
          try (Probe one = new Probe(broker, "");
              Probe other = new Probe(broker, "")) {
            intake.holdBack();
            one.publish(1, "20.5", false);
            Eventually.that("the first", () -> intake.values(Channel.WATER_IN).size() == 1);
            intake.commit();
            assertThat(one.acknowledgement()).isEqualTo(1);
            other.publish(1, "21.5", false);
            one.publish(2, "22.5", false);
            Eventually.that("all", () -> intake.values(Channel.WATER_IN).size() == 3);
            intake.commit();
            assertThat(other.acknowledgement()).isEqualTo(1);
            assertThat(one.acknowledgement()).isEqualTo(2);
          }
        });
  }

  /** The connection broke while its message waited for the disk. */
  @Test
  void whatIsUnderWayIsAcknowledgedToTheNextConnectionOnceItIsOnDisk() throws Exception {
    withBroker(
        broker -> {
          intake.holdBack();
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(7, "20.5", false);
            Eventually.that("it came", () -> intake.values(Channel.WATER_IN).contains(20.5));
          }
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(7, "20.5", true);
            assertThat(probe.isSilentFor(500)).isTrue();
            intake.commit();
            assertThat(probe.acknowledgement()).isEqualTo(7);
            assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5);
          }
        });
  }

  /** Of equal messages each is acknowledged, and no sooner than as many are on disk. */
  @Test
  void equalMessagesAreAcknowledgedAsOftenAsTheyAreOnDisk() throws Exception {
    withBroker(
        broker -> {
          intake.holdBack();
          try (Probe one = new Probe(broker, "one");
              Probe other = new Probe(broker, "other")) {
            one.publish(1, "20.5", false);
            Eventually.that("the first", () -> intake.values(Channel.WATER_IN).size() == 1);
            other.publish(1, "20.5", false);
            Eventually.that("the second", () -> intake.values(Channel.WATER_IN).size() == 2);
            assertThat(one.isSilentFor(200)).isTrue();
            assertThat(other.isSilentFor(200)).isTrue();
            intake.commit();
            assertThat(one.acknowledgement()).isEqualTo(1);
            assertThat(other.acknowledgement()).isEqualTo(1);
          }
        });
  }

  /**
   * A probe that lost patience while the recorder started leaves connections behind that are
   * answered when nobody is there any more. They are not taken for the one that it uses now.
   */
  @Test
  void connectionsLeftBehindAreNotTakenForTheProbe() throws Exception {
    for (int turn = 0; turn < LEFT_BEHIND_TURNS; turn++) {
      try (EmbeddedBroker broker = brokerThatKnowsOurs();
          ProbeSource source = source(broker)) {
        source.start(intake);
        for (int i = 0; i < 4; i++) {
          Probe.callAndLeave(broker, "box");
        }
        CompletableFuture<Void> open = CompletableFuture.runAsync(broker::letAllIn);
        double value = 20 + turn / 64.0;
        Eventually.that("its message is acknowledged", () -> isTaken(broker, value));
        open.join();
      }
      assertThat(intake.values(Channel.WATER_IN)).contains(20 + turn / 64.0);
    }
  }

  /** Connects and publishes, as long as the broker lets it. */
  private static boolean isTaken(EmbeddedBroker broker, double value) {
    try (Probe probe = new Probe(broker, "box")) {
      probe.publish(1, Double.toString(value), false);
      // Or what the broker says to one whose place another connection takes.
      return probe.in.readUnsignedShort() == PUBACK;
    } catch (IOException putOut) {
      return false;
    }
  }

  /**
   * A thread of the library's server died, as it tells then. What was under way was not
   * acknowledged, so it comes again; nobody is let in before our source hears.
   */
  @Test
  void aServerThatStumblesIsStartedAgainAndNothingAcknowledgedIsLost() throws Exception {
    withBroker(
        broker -> {
          broker.reportTo(intake);
          try (Probe probe = new Probe(broker, "box")) {
            probe.publish(1, "20.5", false);
            assertThat(probe.acknowledgement()).isEqualTo(1);
            intake.holdBack();
            probe.publish(2, "21.5", false);
            Eventually.that("it came", () -> intake.values(Channel.WATER_IN).contains(21.5));
          }
          ListeningServer before = broker.listening();
          before.watch().onSessionLoopError(new IllegalStateException("dead"));
          Eventually.that("another server", () -> broker.listening() != before);
          intake.commit();
          intake.durableAtOnce();
          Eventually.that("its message is acknowledged", () -> isTaken(broker, 22.5));
          assertThat(intake.values(Channel.WATER_IN)).contains(20.5, 21.5, 22.5);
          assertThat(intake.happened())
              .contains("SOURCE_LOST broker: the broker stumbled and is started again: dead");
          broker.takeNoMore(Duration.ofSeconds(30));
        });
  }

  /** All that was taken is waited for and acknowledged; what comes later is not. */
  @Test
  void beforeAStopAllThatWasTakenGetsToTheDisk() throws Exception {
    withBroker(
        broker -> {
          intake.holdBack();
          try (Probe probe = new Probe(broker, "box")) {
            int many = 50;
            for (int i = 1; i <= many; i++) {
              probe.publish(i, "20." + (100 + i), false);
            }
            assertThat(probe.isSilentFor(200)).isTrue();
            CompletableFuture<Void> stopping =
                CompletableFuture.runAsync(() -> broker.takeNoMore(Duration.ofMinutes(1)));
            while (!stopping.isDone()) {
              intake.commit();
              Thread.sleep(5);
            }
            assertThat(intake.values(Channel.WATER_IN)).hasSize(many);
            for (int i = 1; i <= many; i++) {
              assertThat(probe.acknowledgement()).isEqualTo(i);
            }
            probe.publish(many + 1, "30", false);
            assertThat(probe.isSilentFor(500)).isTrue();
            assertThat(intake.values(Channel.WATER_IN)).hasSize(many);
          }
        });
  }
}
