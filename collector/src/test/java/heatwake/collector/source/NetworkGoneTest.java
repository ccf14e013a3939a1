package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The network between recorder and broker is gone for an hour while a probe goes on publishing. The
 * hour passes on the recorder's clocks in a moment; broker, network and messages are real.
 */
class NetworkGoneTest {
  private static final int SENT = 3600;
  private static final long HOUR_MS = TimeUnit.HOURS.toMillis(1);

  @TempDir private Path folder;
  private final JumpingClock clock = new JumpingClock();
  private final long firstMs = System.currentTimeMillis();

  private RigFile rig(int version, int port) {
    return FlowByMqtt.rig(version, port, "every = \"1 s\"");
  }

  private List<String> flow(int from, int to) {
    return FlowByMqtt.messages(firstMs, from, to);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whatWasPublishedMeanwhileIsThereAndTheHourIsTwoEvents(int version) throws Exception {
    Recording recording = load(recordThroughTheHour(version));
    Series flow = recording.of(Channel.FLOW_HEATER).orElseThrow();
    assertThat(flow.size()).isEqualTo(SENT);
    assertThat(flow.timeMs(SENT - 1)).isEqualTo(firstMs + 1000L * (SENT - 1));
    for (EventKind kind : List.of(EventKind.SOURCE_LOST, EventKind.PROBE_SILENT)) {
      assertThat(recording.events())
          .filteredOn(event -> event.kind() == kind)
          .filteredOn(event -> lastedMs(event) >= HOUR_MS)
          .as("one %s of an hour", kind)
          .hasSize(1);
    }
  }

  private long recordThroughTheHour(int version) throws Exception {
    int port = Mosquitto.freePort();
    try (Mosquitto broker = Mosquitto.open(folder);
        Recorder recorder =
            Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL.with(clock))) {
      String[] cable = {
        "TCP-LISTEN:" + port + ",bind=127.0.0.1,reuseaddr,fork", "TCP:127.0.0.1:" + broker.port()
      };
      RealProgram network = RealProgram.start(folder, "socat", cable);
      RigFile rig = rig(version, port);
      RecordedRun run = recorder.begin(rig);
      ProbeSource source = ProbeSources.of(rig).get(0);
      source.start(run);
      // Before that the broker has no session to keep messages in.
      Eventually.that("subscribed", () -> broker.log().contains("Sending SUBACK"));
      broker.publish("heron/flow", flow(0, 2));
      Eventually.that("the first", () -> run.stored() == 2);

      network.killWithChildren();
      Eventually.that("noticed", () -> lasting(run, EventKind.SOURCE_LOST) == 1);
      clock.pass(1, TimeUnit.HOURS);
      Eventually.that("missed", () -> lasting(run, EventKind.PROBE_SILENT) == 1);
      broker.publish("heron/flow", flow(2, SENT));
      try (RealProgram again = RealProgram.start(folder, "socat", cable)) {
        Eventually.that("all", () -> run.stored() == SENT);
        Eventually.that("heard", () -> lasting(run, EventKind.PROBE_SILENT) == 0);
        assertThat(again.isRunning()).isTrue();
        source.close();
      }
      return run.id();
    }
  }

  private static long lastedMs(RunEvent event) {
    return event.endMs().orElseThrow() - event.startMs();
  }

  private long lasting(RecordedRun run, EventKind kind) {
    return load(run.id()).events().stream()
        .filter(event -> event.kind() == kind && event.endMs().isEmpty())
        .count();
  }

  private Recording load(long run) {
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      return store.load(run);
    }
  }
}
