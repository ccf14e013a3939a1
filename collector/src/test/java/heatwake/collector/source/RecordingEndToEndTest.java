package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.RunEvent;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The main job on real wires: a rig file, a pseudo-terminal pair, a Mosquitto broker and its
 * client, the recorder, the database.
 */
class RecordingEndToEndTest {
  private static final long START_MS = 1935684000000L;

  @TempDir private Path folder;

  private record Stored(long timeMs, double value) {}

  private static RigFile rig(PtyPair cable, Mosquitto broker) {
    return RigReader.parse(
        String.join(
            "\n",
            "[site]",
            "name = \"Heron Lane\"",
            "[[source]]",
            "name = \"clips\"",
            "serial = \"" + cable.port() + "\"",
            "lines = \"key-value\"",
            "[[source]]",
            "name = \"wifi\"",
            "mqtt = \"" + broker.url() + "\"",
            "[[probe]]",
            "channel = \"water-in\"",
            "source = \"clips\"",
            "field = \"t1\"",
            "unit = \"degF\"",
            "[[probe]]",
            "channel = \"flow-heater\"",
            "source = \"wifi\"",
            "topic = \"heron/flow\"",
            "field = \"/rate\"",
            "time = \"/at\"",
            "unit = \"m3/h\"",
            "[[probe]]",
            "channel = \"power\"",
            "source = \"wifi\"",
            "topic = \"heron/+/power\"",
            "unit = \"kW\""),
        "heron.toml");
  }

  private static String flow(int i) {
    return "{\"rate\":" + (6 + i * 0.003) + ",\"at\":" + (START_MS + 1000L * i) + "}";
  }

  private Map<Channel, List<Stored>> stored(long run) {
    Map<Channel, List<Stored>> all = new EnumMap<>(Channel.class);
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      store.forEachReading(
          run,
          (channel, timeMs, value) ->
              all.computeIfAbsent(channel, first -> new ArrayList<>())
                  .add(new Stored(timeMs, value)));
    }
    return all;
  }

  private static void start(List<ProbeSource> sources, RecordedRun run) throws Exception {
    for (ProbeSource source : sources) {
      source.start(run);
    }
  }

  @Test
  void serialAndMqttLandInOneRunAllOfThemWithValuesAndTimes() throws Exception {
    int count = 400;
    long run;
    long beforeMs = System.currentTimeMillis();
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        Mosquitto broker = Mosquitto.open(folder);
        Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RigFile rig = rig(cable, broker);
      List<ProbeSource> sources = ProbeSources.of(rig);
      RecordedRun recorded = recorder.begin(rig);
      run = recorded.id();
      start(sources, recorded);

      Thread publisher =
          new Thread(
              () -> {
                try {
                  broker.publish(
                      "heron/flow", IntStream.range(0, count).mapToObj(i -> flow(i)).toList());
                  broker.publish(
                      "heron/unit1/power",
                      IntStream.range(0, count).mapToObj(i -> "" + (2 + i / 256.0)).toList());
                } catch (Exception fault) {
                  throw new IllegalStateException(fault);
                }
              });
      publisher.start();
      for (int i = 0; i < count; i++) {
        cable.send("t1=" + (77 + i) + "\n");
      }
      publisher.join();
      Eventually.that("all stored", () -> recorded.stored() >= 3L * count);
      sources.forEach(ProbeSource::close);
    }
    long afterMs = System.currentTimeMillis();

    Map<Channel, List<Stored>> all = stored(run);
    // Flow: its own times; 1 m3/h = 1000/60 L/min by definition.
    assertThat(all.get(Channel.FLOW_HEATER)).hasSize(count);
    for (int i = 0; i < count; i++) {
      Stored one = all.get(Channel.FLOW_HEATER).get(i);
      assertThat(one.timeMs()).isEqualTo(START_MS + 1000L * i);
      assertThat(one.value()).isCloseTo((6 + i * 0.003) * 1000 / 60, within(1e-9));
    }
    // The others: in order, between start and end. 77 degF = 25 Cel and 1.8 degF = 1 K by
    // definition.
    assertThat(all.get(Channel.WATER_IN)).hasSize(count);
    assertThat(all.get(Channel.POWER)).hasSize(count);
    for (int i = 0; i < count; i++) {
      assertThat(all.get(Channel.WATER_IN).get(i).value()).isCloseTo(25 + i / 1.8, within(1e-9));
      assertThat(all.get(Channel.POWER).get(i).value()).isEqualTo(1000 * (2 + i / 256.0));
      assertThat(all.get(Channel.WATER_IN).get(i).timeMs()).isBetween(beforeMs, afterMs + 1000);
    }
  }

  @Test
  void cablePulledAndBrokerKilledAreEventsAndCostNothingThatWasSent() throws Exception {
    long run;
    List<RunEvent> events;
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        Mosquitto broker = Mosquitto.open(folder);
        Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RigFile rig = rig(cable, broker);
      List<ProbeSource> sources = ProbeSources.of(rig);
      RecordedRun recorded = recorder.begin(rig);
      run = recorded.id();
      start(sources, recorded);
      cable.send("t1=77\n");
      broker.publish("heron/flow", List.of(flow(0)));
      Eventually.that("the first", () -> recorded.stored() == 2);

      cable.unplug();
      broker.kill();
      Thread.sleep(1500); // Long enough for both to be missed.
      cable.plug();
      broker.start();
      broker.publish("heron/flow", IntStream.range(1, 50).mapToObj(i -> flow(i)).toList());
      Eventually.that("flow all there", () -> stored(run).get(Channel.FLOW_HEATER).size() == 50);
      Eventually.that(
          "clips back",
          () -> {
            cable.send("t1=78\n");
            return stored(run).get(Channel.WATER_IN).size() >= 2;
          });
      sources.forEach(ProbeSource::close);
    }
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      events = store.load(run).events();
    }
    for (String source : List.of("clips", "wifi")) {
      assertThat(events)
          .filteredOn(event -> event.kind() == EventKind.SOURCE_LOST)
          .filteredOn(event -> event.subject().equals(source))
          .singleElement()
          .matches(event -> event.endMs().orElse(0) > event.startMs());
    }
    assertThat(stored(run).get(Channel.FLOW_HEATER))
        .extracting(Stored::timeMs)
        .containsExactlyElementsOf(
            IntStream.range(0, 50).mapToObj(i -> START_MS + 1000L * i).toList());
  }
}
