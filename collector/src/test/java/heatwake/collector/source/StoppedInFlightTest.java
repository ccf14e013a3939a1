package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The recorder is stopped while a real broker has messages under way to it, and a new one started:
 * each message is stored, once, in one run or the other.
 */
@Timeout(180)
class StoppedInFlightTest {
  private static final int MANY = 3000;

  /** Fewer than Mosquitto leaves unacknowledged (20, mosquitto.conf(5), max_inflight_messages). */
  private static final int FEW = 10;

  @TempDir private Path folder;
  private final long firstMs = System.currentTimeMillis() - 3_600_000;

  private Path database() {
    return folder.resolve("heatwake.db");
  }

  private RigFile rig(int version, int port) {
    return FlowByMqtt.rig(version, port, "");
  }

  private List<String> flow(int from, int to) {
    return FlowByMqtt.messages(firstMs, from, to);
  }

  private RealProgram cable(Mosquitto broker, int port) throws Exception {
    return RealProgram.start(
        folder,
        "socat",
        "TCP-LISTEN:" + port + ",bind=127.0.0.1,reuseaddr,fork",
        "TCP:127.0.0.1:" + broker.port());
  }

  private static long count(Mosquitto broker, String text) throws Exception {
    return broker.log().lines().filter(line -> line.contains(text)).count();
  }

  private static void subscribe(Mosquitto broker, ProbeSource source, RecordedRun run)
      throws Exception {
    long before = count(broker, "Sending SUBACK");
    source.start(run);
    Eventually.that("subscribed", () -> count(broker, "Sending SUBACK") > before);
  }

  private long storedInAll() {
    try (Store store = Store.openExisting(database())) {
      return store.runs().stream().mapToLong(RunSummary::readings).sum();
    }
  }

  private void eachIsStoredOnce(int sent) {
    List<Long> stamps = new ArrayList<>();
    try (Store store = Store.openExisting(database())) {
      for (RunSummary run : store.runs()) {
        Recording recording = store.load(run.id());
        assertThat(recording.leftOut()).isEmpty();
        recording.of(Channel.FLOW_HEATER).ifPresent(series -> stamps(series).forEach(stamps::add));
      }
    }
    stamps.sort(null);
    assertThat(stamps)
        .containsExactlyElementsOf(
            LongStream.range(0, sent).mapToObj(i -> firstMs + 1000 * i).toList());
  }

  private static LongStream stamps(Series series) {
    return IntStream.range(0, series.size()).mapToLong(series::timeMs);
  }

  /** A stop in the middle of a stream, over a link that stands. */
  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whileMessagesAreInFlight(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder)) {
      RigFile rig = rig(version, broker.port());
      CompletableFuture<Void> published;
      try (Recorder recorder = Recorder.open(database(), RecorderSettings.USUAL);
          ProbeSource source = ProbeSources.of(rig).get(0)) {
        RecordedRun run = recorder.begin(rig);
        subscribe(broker, source, run);
        published =
            CompletableFuture.runAsync(
                () -> {
                  try {
                    broker.publish("heron/flow", flow(0, MANY));
                  } catch (Exception e) {
                    throw new IllegalStateException(e);
                  }
                });
        Eventually.that("some are stored", () -> run.stored() >= 100);
      }
      assertThat(storedInAll()).isLessThan(MANY);
      try (Recorder recorder = Recorder.open(database(), RecorderSettings.USUAL);
          ProbeSource source = ProbeSources.of(rig).get(0)) {
        subscribe(broker, source, recorder.begin(rig));
        published.join();
        Eventually.that("all are stored", () -> storedInAll() >= MANY);
      }
    }
    eachIsStoredOnce(MANY);
  }

  /** The link breaks with messages delivered and not acknowledged; the stop finds it broken. */
  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whileTheLinkIsDown(int version) throws Exception {
    int port = Mosquitto.freePort();
    RigFile rig = rig(version, port);
    try (Mosquitto broker = Mosquitto.open(folder)) {
      RealProgram network = cable(broker, port);
      try (Recorder recorder = Recorder.open(database(), RecorderSettings.USUAL);
          ProbeSource source = ProbeSources.of(rig).get(0)) {
        RecordedRun run = recorder.begin(rig);
        subscribe(broker, source, run);
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + database());
            Statement statement = other.createStatement()) {
          statement.execute("BEGIN IMMEDIATE");
          broker.publish("heron/flow", flow(0, FEW));
          Eventually.that("delivered", () -> recorder.waiting() == FEW);
          network.killWithChildren();
          statement.execute("ROLLBACK");
        }
        Eventually.that("stored", () -> run.stored() == FEW);
      }
      assertThat(count(broker, "Received PUBACK from heatwake")).isZero();
      broker.publish("heron/flow", flow(FEW, 2 * FEW));
      try (RealProgram again = cable(broker, port);
          Recorder recorder = Recorder.open(database(), RecorderSettings.USUAL);
          ProbeSource source = ProbeSources.of(rig).get(0)) {
        subscribe(broker, source, recorder.begin(rig));
        Eventually.that(
            "all delivered and acknowledged",
            () -> count(broker, "Received PUBACK from heatwake") == 2 * FEW);
        assertThat(again.isRunning()).isTrue();
      }
      assertThat(count(broker, "(d1, q1")).as("delivered again").isEqualTo(FEW);
    }
    eachIsStoredOnce(2 * FEW);
  }
}
