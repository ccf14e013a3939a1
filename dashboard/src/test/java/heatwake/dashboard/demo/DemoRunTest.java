package heatwake.dashboard.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.store.Store;
import heatwake.dashboard.demo.plant.Tap;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A simulated run through broker, MQTT source, recorder and database: what goes in comes out. */
class DemoRunTest {
  private static final long START_MS = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  @TempDir Path folder;

  @Test
  void everyReadingArrivesWithItsValueAndTime() throws InterruptedException {
    Scenario story = Scenarios.of("start-up");
    Scenario scenario =
        new Scenario(
            story.name(),
            story.story(),
            story.site().lasting(1200),
            story.probes(),
            story.ailments(),
            story.troubles());
    DemoFolder out = new DemoFolder(folder);
    DemoRun run = DemoRun.record(scenario, out, START_MS, share -> {});
    assertThat(run.stored()).isEqualTo(run.sent());

    Map<Tap, TreeMap<Long, Double>> sent = new EnumMap<>(Tap.class);
    scenario
        .from(START_MS)
        .play(
            (tap, timeMs, value) ->
                sent.computeIfAbsent(tap, any -> new TreeMap<>()).put(timeMs, value));
    Recording recording;
    try (Store store = Store.openExisting(out.database())) {
      recording = store.load(run.run());
    }
    assertThat(recording.series()).hasSize(sent.size());
    sent.forEach(
        (tap, readings) -> {
          Channel channel = Channel.of(tap.channel());
          Series series = recording.of(channel).orElseThrow();
          assertThat(series.size()).isEqualTo(readings.size());
          int i = 0;
          for (Map.Entry<Long, Double> reading : readings.entrySet()) {
            assertThat(series.timeMs(i)).isEqualTo(reading.getKey());
            assertThat(channel.storedUnit().fromSi(series.value(i)))
                .isCloseTo(reading.getValue(), within(1e-9));
            i++;
          }
        });
  }

  @Test
  void anUnknownScenarioIsAMistakeThatNamesTheOthers() {
    assertThat(catchThrowable(() -> Scenarios.of("low-flo")).getMessage())
        .startsWith("--scenario low-flo: there is no such scenario; choose one of healthy-night,");
  }
}
