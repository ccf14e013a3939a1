package heatwake.collector.soak;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Messages without a time of their own, from a real broker to a recorder process that is killed or
 * stopped while the link is down: what the broker then sends again is known, and each is stored
 * once. Values are all different, so that each can be counted. For more ends at random moments:
 * {@code -Dheatwake.lives=50}.
 */
@Timeout(900)
class UnstampedOnceTest {
  private static final int LIVES = Integer.getInteger("heatwake.lives", 3);
  private static final int MESSAGES_IN_A_LIFE = 400;

  /** Fewer than Mosquitto leaves unacknowledged (20, mosquitto.conf(5), max_inflight_messages). */
  private static final int FEW = 10;

  private static final long NEVER_CUT = 1_000_000_000;

  @TempDir private Path folder;
  private final Random random = new Random();

  private Path database() {
    return folder.resolve("heatwake.db");
  }

  private RecorderUnderSoak recorder(int version, int port, long readingsInARun) throws Exception {
    String rig =
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "wifi"
        version = %d
        mqtt = "mqtt://127.0.0.1:%d"
        [[probe]]
        channel = "flow-heater"
        source = "wifi"
        topic = "heron/flow"
        field = "/rate"
        unit = "L/min"
        [[probe]]
        channel = "power"
        source = "wifi"
        topic = "heron/flow"
        field = "/power"
        unit = "W"
        """
            .formatted(version, port);
    Path file = Files.writeString(folder.resolve("heron.toml"), rig);
    return new RecorderUnderSoak(folder, file, database(), readingsInARun);
  }

  private static List<String> messages(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "{\"rate\":" + flow(i) + ",\"power\":" + (1000 + i) + "}")
        .toList();
  }

  private static double flow(int i) {
    return 100 + i / 64.0;
  }

  private static long count(Mosquitto broker, String text) throws Exception {
    return broker.log().lines().filter(line -> line.contains(text)).count();
  }

  private static void start(RecorderUnderSoak recorder) throws Exception {
    long before = recorder.said("recording");
    recorder.start();
    Eventually.that(
        "recording",
        () -> {
          recorder.mustLive();
          // The line of the run alone; the log says more.
          return recorder.said("recording") > before;
        });
  }

  private List<Double> values(Channel wanted) {
    List<Double> values = new ArrayList<>();
    try (Store store = Store.openExisting(database())) {
      for (RunSummary run : store.runs()) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> {
              if (channel == wanted) {
                values.add(value);
              }
            });
      }
    }
    values.sort(null);
    return values;
  }

  private long stored() {
    return values(Channel.FLOW_HEATER).stream().distinct().count();
  }

  private void eachIsStoredOnce(int sent) {
    assertThat(values(Channel.FLOW_HEATER))
        .containsExactlyElementsOf(
            IntStream.range(0, sent).mapToObj(UnstampedOnceTest::flow).toList());
    assertThat(values(Channel.POWER))
        .containsExactlyElementsOf(IntStream.range(0, sent).mapToObj(i -> 1000.0 + i).toList());
  }

  /**
   * The link is cut at a random moment of a stream and the recorder ended at another, by turns
   * killed and stopped; runs are cut by size all the while. How many messages are sent again, if
   * any, is left to chance here; {@link #storedButNotAcknowledged} leaves none to it.
   */
  @ParameterizedTest
  @CsvSource({"3, 1", "5, 2"})
  void endedAtRandomMomentsWithTheLinkDown(int version, int quality) throws Exception {
    int sent = 0;
    try (Mosquitto broker = Mosquitto.open(folder);
        SoakedNetwork network = SoakedNetwork.joined(folder, broker.port());
        RecorderUnderSoak recorder = recorder(version, network.port(), 1000)) {
      for (int life = 0; life < LIVES; life++) {
        start(recorder);
        int first = sent;
        sent += MESSAGES_IN_A_LIFE;
        broker.publish("heron/flow", messages(first, sent), "-q", Integer.toString(quality));
        Thread.sleep(random.nextInt(60));
        network.cut();
        Thread.sleep(random.nextInt(500));
        if (life % 2 == 0) {
          recorder.kill();
        } else {
          recorder.stop();
        }
        network.join();
      }
      start(recorder);
      int all = sent;
      Eventually.that("all are stored", () -> stored() >= all);
      // What was sent again would be stored by the time this one, sent last, is.
      broker.publish("heron/flow", messages(all, all + 1));
      Eventually.that("the last one too", () -> stored() > all);
      System.out.println(
          LIVES + " ends, " + all + " messages, sent again " + count(broker, "(d1, q1"));
    }
    eachIsStoredOnce(sent + 1);
  }

  /** Nothing is left to chance here: all were stored, none was acknowledged. */
  @ParameterizedTest
  @CsvSource({"3, true", "3, false", "5, true", "5, false"})
  void storedButNotAcknowledged(int version, boolean killed) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        SoakedNetwork network = SoakedNetwork.joined(folder, broker.port());
        RecorderUnderSoak recorder = recorder(version, network.port(), NEVER_CUT)) {
      start(recorder);
      deliverAndCut(broker, network, messages(0, FEW));
      Eventually.that("stored", () -> stored() == FEW);
      if (killed) {
        recorder.kill();
      } else {
        recorder.stop();
      }
      assertThat(count(broker, "Received PUBACK from heatwake")).isZero();
      network.join();
      start(recorder);
      broker.publish("heron/flow", messages(FEW, 2 * FEW));
      Eventually.that(
          "all acknowledged", () -> count(broker, "Received PUBACK from heatwake") == 2 * FEW);
      assertThat(count(broker, "(d1, q1")).as("sent again").isEqualTo(FEW);
      recorder.stop();
    }
    eachIsStoredOnce(2 * FEW);
  }

  /** The messages reach the recorder, which cannot write them before the link is cut. */
  private void deliverAndCut(Mosquitto broker, SoakedNetwork network, List<String> messages)
      throws Exception {
    long before = count(broker, "Sending PUBLISH to heatwake");
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + database());
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      broker.publish("heron/flow", messages);
      Eventually.that(
          "sent", () -> count(broker, "Sending PUBLISH to heatwake") == before + messages.size());
      // What the broker has written reaches a process of the same machine within this.
      Thread.sleep(500);
      network.cut();
      statement.execute("ROLLBACK");
    }
  }

  /**
   * A broker that forgot our session gives its identifiers anew: a message that was never stored
   * must not be taken for one that was stored under the same, be it word for word alike.
   */
  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void ofASessionThatIsNewNothingIsKnown(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        SoakedNetwork network = SoakedNetwork.joined(folder, broker.port());
        RecorderUnderSoak recorder = recorder(version, network.port(), NEVER_CUT)) {
      start(recorder);
      broker.publish("heron/flow", messages(0, 1));
      Eventually.that("stored", () -> stored() == 1);
      recorder.kill();
      broker.kill();
      Files.delete(folder.resolve("mosquitto.db"));
      broker.start();
      start(recorder);
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + database());
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        broker.publish("heron/flow", messages(0, 1));
        Eventually.that("sent", () -> count(broker, "Sending PUBLISH to heatwake") == 1);
        recorder.kill();
        statement.execute("ROLLBACK");
      }
      start(recorder);
      Eventually.that("acknowledged", () -> count(broker, "Received PUBACK from heatwake") == 1);
      assertThat(count(broker, "(d1, q1")).as("sent again").isOne();
      recorder.stop();
    }
    assertThat(values(Channel.FLOW_HEATER)).containsExactly(flow(0), flow(0));
  }

  /** Word for word the same message under another identifier is another message. */
  @Test
  void equalMessagesAreStoredEach() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        SoakedNetwork network = SoakedNetwork.joined(folder, broker.port());
        RecorderUnderSoak recorder = recorder(3, network.port(), NEVER_CUT)) {
      start(recorder);
      List<String> alike = List.of(messages(0, 1).get(0), messages(0, 1).get(0));
      deliverAndCut(broker, network, alike);
      Eventually.that("stored", () -> values(Channel.FLOW_HEATER).size() == 2);
      recorder.kill();
      network.join();
      start(recorder);
      broker.publish("heron/flow", alike);
      Eventually.that(
          "all acknowledged", () -> count(broker, "Received PUBACK from heatwake") == 4);
      recorder.stop();
    }
    assertThat(values(Channel.FLOW_HEATER)).containsExactly(flow(0), flow(0), flow(0), flow(0));
  }
}
