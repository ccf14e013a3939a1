package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Runs cut by size while two sources go on sending. */
@Timeout(120)
class CutBySizeTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");
  private static final int MOST = 1000;
  private static final int MOST_OF_SHORT_RUNS = 20;

  @TempDir private Path folder;

  @Test
  void noReadingIsLostBetweenAndOldRunsAreKept() throws Exception {
    Path file = folder.resolve("heatwake.db");
    long firstMs = System.currentTimeMillis() - 3_600_000;
    int sent = 0;
    try (Recorder recorder =
        Recorder.open(file, RecorderSettings.USUAL.with(new Cut.Readings(MOST)))) {
      RecordedRun run = recorder.begin(RIG);
      long first = run.id();
      while (run.id() < first + 3) {
        for (int i = 0; i < 20; i++) {
          run.deliver(
              Delivery.of(
                  List.of(
                      new Reading(Channel.POWER, firstMs + sent, sent, true),
                      new Reading(Channel.CURRENT, firstMs + sent, sent, true))));
          sent++;
        }
        Thread.sleep(10);
      }
      // A note goes into the run that is being recorded now.
      try (Store store = Store.openExisting(file)) {
        assertThat(store.runsWithoutEnd()).containsExactly(run.id());
        store.addNote(run.id(), firstMs, "bypass moved");
      }
      int all = 2 * sent;
      Eventually.that("all stored", () -> stored(file) == all);
    }
    Set<Integer> power = new TreeSet<>();
    try (Store store = Store.openExisting(file)) {
      List<RunSummary> runs = store.runs();
      assertThat(runs).hasSizeGreaterThanOrEqualTo(4);
      assertThat(runs.subList(0, runs.size() - 1))
          .allSatisfy(run -> assertThat(run.readings()).isGreaterThanOrEqualTo(MOST));
      assertThat(runs.stream().mapToLong(RunSummary::readings).sum()).isEqualTo(2L * sent);
      for (RunSummary run : runs) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> {
              if (channel == Channel.POWER) {
                power.add((int) value);
              }
            });
      }
      assertThat(store.load(runs.get(runs.size() - 1).id()).notes()).hasSizeLessThanOrEqualTo(1);
      assertThat(runs.stream().mapToInt(run -> store.load(run.id()).notes().size()).sum())
          .isEqualTo(1);
    }
    assertThat(power).containsExactlyElementsOf(IntStream.range(0, sent).boxed().toList());
  }

  /** A probe with a memory of its own may send what it holds from weeks ago. */
  @Test
  void whatManyRunsBackWasStoredIsKnownAgain() throws Exception {
    Path file = folder.resolve("heatwake.db");
    RigFile rig =
        RigReader.parse(
            """
            [site]
            name = "Heron Lane"
            [[source]]
            name = "air"
            mqtt = "mqtt://127.0.0.1:1883"
            [[probe]]
            channel = "power"
            source = "air"
            topic = "heron/power"
            unit = "W"
            """,
            "rig.toml");
    long firstMs = System.currentTimeMillis() - 3_600_000;
    int sent = 0;
    try (Recorder recorder =
        Recorder.open(file, RecorderSettings.USUAL.with(new Cut.Readings(MOST_OF_SHORT_RUNS)))) {
      RecordedRun run = recorder.begin(rig);
      long first = run.id();
      while (run.id() < first + 12) {
        run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, firstMs + sent, sent, true))));
        sent++;
        Thread.sleep(1);
      }
      run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, firstMs, 0, true))));
      int all = sent;
      // Another value of that time is another reading, and news.
      run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, firstMs, 7, true))));
      Eventually.that("all and the other value stored", () -> stored(file) == all + 1);
    }
    assertThat(stored(file)).isEqualTo(sent + 1);
  }

  private static long stored(Path file) {
    try (Store store = Store.openExisting(file)) {
      return store.runs().stream().mapToLong(RunSummary::readings).sum();
    }
  }
}
