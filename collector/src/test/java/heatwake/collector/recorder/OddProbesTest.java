package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.collector.peer.Eventually;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Probes that send too much or in no order, on a real database; clocks are the test's. */
@Timeout(120)
class OddProbesTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\nevery = \"1 s\"\n",
          "rig.toml");
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final int A_MINUTE_MS = 60_000;

  @TempDir private Path folder;
  private final SettableClock clock = new SettableClock(START);

  private Recorder open() {
    return Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL.with(clock));
  }

  private Recording load(long run) {
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      return store.load(run);
    }
  }

  private static List<RunEvent> of(Recording recording, EventKind kind) {
    return recording.events().stream().filter(event -> event.kind() == kind).toList();
  }

  private static void deliverArrived(RecordedRun run, int count) throws InterruptedException {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      readings.add(new Reading(Channel.POWER, run.nowMs(), i, false));
    }
    run.deliver(Delivery.of(readings));
  }

  @Test
  void floodIsAnEventWithStartAndEndAndAllOfItIsKept() throws Exception {
    long id;
    int sent = 0;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      while (of(load(id), EventKind.FLOODING).isEmpty()) {
        deliverArrived(run, 100);
        sent += 100;
        clock.passMs(1000);
        Thread.sleep(50);
      }
      assertThat(of(load(id), EventKind.FLOODING).get(0).endMs()).isEmpty();
      Eventually.that(
          "the flood is over",
          () -> {
            deliverArrived(run, 1);
            clock.passMs(1000);
            return of(load(id), EventKind.FLOODING).get(0).endMs().isPresent();
          });
    }
    Recording recording = load(id);
    assertThat(of(recording, EventKind.FLOODING))
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.subject()).isEqualTo("power");
              assertThat(event.endMs().orElseThrow()).isGreaterThan(event.startMs());
              assertThat(event.text())
                  .contains("readings a second; stated is one every 1.00 s; all are kept");
            });
    assertThat(recording.of(Channel.POWER).orElseThrow().size()).isGreaterThan(sent);
  }

  @Test
  void moreThanOneAMillisecondWithoutAStampIsDroppedAMinuteAheadAndCounted() throws Exception {
    int sent = A_MINUTE_MS + 10_000;
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliverArrived(run, sent);
    }
    Recording recording = load(id);
    Series power = recording.of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(A_MINUTE_MS + 1);
    assertThat(power.timeMs(power.size() - 1)).isEqualTo(START + A_MINUTE_MS);
    assertThat(of(recording, EventKind.FLOODING))
        .filteredOn(event -> event.subject().equals("power dropped"))
        .singleElement()
        .satisfies(event -> assertThat(event.count()).isEqualTo(sent - power.size()));
  }

  /** Another program holds the database for a minute, while the probe sends once a second. */
  @Test
  void aLockedDatabaseIsNoSilenceAndNoFlood() throws Exception {
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliverArrived(run, 1);
      try (Connection other =
              DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("heatwake.db"));
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        deliverArrived(run, 1);
        Eventually.that("it is blocked", () -> recorder.blocked().isPresent());
        for (int s = 0; s < 60; s++) {
          clock.passMs(1000);
          deliverArrived(run, 1);
        }
        statement.execute("ROLLBACK");
      }
      Eventually.that("all is stored", () -> recorder.waiting() == 0);
      clock.passMs(1000);
      deliverArrived(run, 1);
      Eventually.that("one more", () -> run.stored() == 63);
    }
    assertThat(of(load(id), EventKind.STORE_BLOCKED)).hasSize(1);
    assertThat(of(load(id), EventKind.PROBE_SILENT)).isEmpty();
    assertThat(of(load(id), EventKind.FLOODING)).isEmpty();
  }

  /** A probe's clock is refused while another program holds the database for a minute. */
  @Test
  void theMomentOfArrivalIsWhenItWasHandedInHoweverLateItIsWritten() throws Exception {
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      try (Connection other =
              DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("heatwake.db"));
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        deliverArrived(run, 1);
        Eventually.that("it is blocked", () -> recorder.blocked().isPresent());
        for (int s = 1; s <= 60; s++) {
          clock.passMs(1000);
          run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, 5, s, true))));
        }
        statement.execute("ROLLBACK");
      }
      Eventually.that("all is stored", () -> run.stored() == 61);
    }
    Series power = load(id).of(Channel.POWER).orElseThrow();
    for (int s = 0; s <= 60; s++) {
      assertThat(power.timeMs(s)).isEqualTo(START + 1000L * s);
    }
    assertThat(of(load(id), EventKind.TIME_REFUSED))
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.count()).isEqualTo(60);
              assertThat(event.startMs()).isEqualTo(START + 1000);
              assertThat(event.endMs()).hasValue(START + 60_000);
            });
  }

  /** Each second a reading that cannot be, comes twice, contradicts; one more is ten years off. */
  @Test
  void aStampYearsOffBreaksNoOtherEventInTwo() throws Exception {
    long yearsOffMs = START + 10L * 365 * 86_400_000;
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i = 0; i < 6; i++) {
        clock.passMs(1000);
        run.deliver(
            Delivery.of(
                List.of(
                    new Reading(Channel.CURRENT, run.nowMs(), 1e9, true),
                    new Reading(Channel.CURRENT, run.nowMs(), 1e9, true),
                    new Reading(Channel.CURRENT, run.nowMs(), 5, true))));
        run.deliver(
            Delivery.of(
                List.of(
                    new Reading(Channel.POWER, yearsOffMs + i, 1e9, true),
                    new Reading(Channel.POWER, yearsOffMs + i, 1e9, true),
                    new Reading(Channel.POWER, yearsOffMs + i, 5, true))));
        long both = 2L * (i + 1);
        Eventually.that("both are stored", () -> run.stored() == both);
      }
    }
    for (EventKind kind :
        List.of(EventKind.OUT_OF_RANGE, EventKind.DUPLICATE, EventKind.TIME_CONFLICT)) {
      assertThat(of(load(id), kind))
          .hasSize(2)
          .allSatisfy(
              event -> {
                assertThat(event.startMs()).isEqualTo(START + 1000);
                assertThat(event.endMs()).hasValue(START + 6000);
              });
    }
  }

  /** A broker hands over an hour of stamped readings in a moment; then the probe goes on. */
  @Test
  void aBacklogWithStampsIsNoFloodAndTeachesNoInterval() throws Exception {
    RigFile unstated =
        RigReader.parse(
            "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(unstated);
      id = run.id();
      for (int i = 3600; i > 0; i--) {
        run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, START - i * 10_000L, i, true))));
      }
      clock.passMs(1000);
      Eventually.that("all is stored", () -> run.stored() == 3600);
      // Less than five of its ten seconds: no silence yet.
      clock.passMs(45_000);
      run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, run.nowMs(), 0, true))));
      Eventually.that("one more", () -> run.stored() == 3601);
      assertThat(of(load(id), EventKind.PROBE_SILENT)).isEmpty();
      clock.passMs(300_000);
      Eventually.that(
          "it fell silent",
          () -> {
            run.deliver(Delivery.of(List.of()));
            return !of(load(id), EventKind.PROBE_SILENT).isEmpty();
          });
    }
    assertThat(of(load(id), EventKind.FLOODING)).isEmpty();
    assertThat(of(load(id), EventKind.PROBE_SILENT))
        .singleElement()
        .satisfies(event -> assertThat(event.text()).contains("usual is one every"))
        .satisfies(event -> assertThat(event.text()).doesNotContain("every 0"));
  }

  @Test
  void orderDoesNotMatter() throws Exception {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < 1000; i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(3));
    long id;
    try (Recorder recorder = open()) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i : order) {
        run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, START + 1000L * i, i, true))));
      }
    }
    Recording recording = load(id);
    Series power = recording.of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(1000);
    for (int i = 0; i < 1000; i++) {
      assertThat(power.timeMs(i)).isEqualTo(START + 1000L * i);
      assertThat(power.value(i)).isEqualTo(i);
    }
    assertThat(recording.events())
        .extracting(RunEvent::kind)
        .doesNotContain(EventKind.TIME_CONFLICT, EventKind.DUPLICATE, EventKind.TIME_REFUSED);
  }
}
