package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.peer.Eventually;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A machine without a battery clock: it thinks it is 1970 until the network tells it the date. The
 * clock is the test's.
 */
@Timeout(120)
class LateDateTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");
  private static final long BOOTED_MS = 30_000;
  private static final long TODAY_MS = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final int BEFORE = 20;
  private static final int AFTER = 20;

  @TempDir private Path folder;
  private final SettableClock clock = new SettableClock(BOOTED_MS);

  private void record(RecordedRun run, int number) throws InterruptedException {
    clock.passMs(1000);
    // One probe has a clock of its own, which is right all the time.
    long trueMs = TODAY_MS + 1000L * number;
    run.deliver(
        Delivery.of(
            List.of(
                new Reading(Channel.POWER, run.nowMs(), number, false),
                new Reading(Channel.CURRENT, trueMs, number, true))));
  }

  private void recordAll(RecordedRun run) throws InterruptedException {
    for (int i = 0; i < BEFORE; i++) {
      record(run, i);
    }
    // All before the step has been looked at by the clock of then.
    CountDownLatch safe = new CountDownLatch(1);
    run.deliver(new Delivery(List.of(), safe::countDown));
    safe.await();
    clock.stepMs(TODAY_MS - BOOTED_MS);
    for (int i = BEFORE; i < BEFORE + AFTER; i++) {
      record(run, i);
    }
  }

  @Test
  void nothingIsLostAndTheStepIsTold() throws Exception {
    long id;
    Path file = folder.resolve("heatwake.db");
    try (Recorder recorder = Recorder.open(file, RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      recordAll(run);
    }
    Recording recording;
    try (Store store = Store.openExisting(file)) {
      recording = store.load(id);
    }
    Series power = recording.of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(BEFORE + AFTER);
    assertThat(power.timeMs(0)).isEqualTo(BOOTED_MS + 1000);
    assertThat(power.timeMs(BEFORE)).isEqualTo(TODAY_MS + 1000L * (BEFORE + 1));
    Series current = recording.of(Channel.CURRENT).orElseThrow();
    assertThat(current.size()).isEqualTo(BEFORE + AFTER);
    assertThat(current.timeMs(0)).isEqualTo(TODAY_MS);
    assertThat(recording.events())
        .filteredOn(event -> event.kind() == EventKind.CLOCK_STEP)
        .singleElement()
        .satisfies(event -> assertThat(event.text()).contains("set forward by 1935683970.0 s"));
    assertThat(recording.events())
        .filteredOn(event -> event.kind() == EventKind.PROBE_CLOCK)
        .singleElement()
        .satisfies(event -> assertThat(event.count()).isEqualTo(BEFORE));
  }

  @Test
  void aDailyCutIsMadeOnce() throws Exception {
    Path file = folder.resolve("heatwake.db");
    RecorderSettings daily = RecorderSettings.USUAL.with(clock).with(new Cut.Daily(ZoneOffset.UTC));
    try (Recorder recorder = Recorder.open(file, daily)) {
      RecordedRun run = recorder.begin(RIG);
      long first = run.id();
      recordAll(run);
      Eventually.that("cut", () -> run.id() != first);
      for (int i = 0; i < 5; i++) {
        clock.passMs(1000);
        Thread.sleep(450);
      }
    }
    try (Store store = Store.openExisting(file)) {
      assertThat(store.runs()).hasSize(2);
      assertThat(store.runs().stream().mapToLong(one -> one.readings()).sum())
          .isEqualTo(2L * (BEFORE + AFTER));
    }
  }
}
