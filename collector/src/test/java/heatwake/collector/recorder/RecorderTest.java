package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.series.StampsLeftOut;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The recorder on real database files. */
@Timeout(120)
class RecorderTest {
  private static final RigFile RIG =
      RigReader.parse(
          """
          [site]
          name = "Heron Lane"
          [[source]]
          name = "clips"
          serial = "/dev/null"
          [[probe]]
          channel = "power"
          source = "clips"
          field = "p"
          unit = "W"
          every = "1 s"
          """,
          "rig.toml");
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("heatwake.db");
  }

  private static Reading stamped(long timeMs, double value) {
    return new Reading(Channel.POWER, timeMs, value, true);
  }

  private static Reading arrived(long timeMs, double value) {
    return new Reading(Channel.POWER, timeMs, value, false);
  }

  private static void deliver(RecordedRun run, Reading... readings) throws InterruptedException {
    run.deliver(Delivery.of(List.of(readings)));
  }

  /** Delivers and waits until it is on disk. */
  private static void deliverSafely(RecordedRun run, Reading... readings)
      throws InterruptedException {
    CountDownLatch safe = new CountDownLatch(1);
    run.deliver(new Delivery(List.of(readings), safe::countDown));
    safe.await();
  }

  private Recording load(long run) {
    try (Store store = Store.openExisting(file())) {
      return store.load(run);
    }
  }

  private static List<RunEvent> of(Recording recording, EventKind kind) {
    return recording.events().stream().filter(event -> event.kind() == kind).toList();
  }

  /** The run that a run goes on from, as anybody can read it. */
  private OptionalLong followed(long run) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT follows FROM runs WHERE id = " + run)) {
      long follows = row.getLong(1);
      return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(follows);
    }
  }

  @Test
  void whatIsAcknowledgedIsOnDisk() throws Exception {
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL);
        Store reader = Store.openExisting(file())) {
      RecordedRun run = recorder.begin(RIG);
      for (int i = 0; i < 10; i++) {
        int sent = i + 1;
        CountDownLatch safe = new CountDownLatch(1);
        run.deliver(new Delivery(List.of(stamped(START + i, i)), safe::countDown));
        safe.await();
        assertThat(reader.readingCount(run.id())).isEqualTo(sent);
      }
    }
  }

  /** Whoever waits for its acknowledgement keeps it for the next run. */
  @Test
  void whatComesAfterTheEndOfItsRunIsNotAcknowledged() throws Exception {
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL);
        Store reader = Store.openExisting(file())) {
      RecordedRun over = recorder.begin(RIG);
      RecordedRun next = recorder.begin(RigReader.parse(RIG.text(), "next.toml"));
      recorder.end(over);
      AtomicBoolean acknowledged = new AtomicBoolean();
      over.deliver(new Delivery(List.of(stamped(START, 1)), () -> acknowledged.set(true)));
      deliverSafely(next, stamped(START, 2));
      assertThat(acknowledged).isFalse();
      assertThat(reader.readingCount(over.id())).isZero();
      assertThat(recorder.waiting()).isZero();
    }
  }

  @Test
  void endsItsRunsAndStoresAllThatWasDelivered() throws Exception {
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i = 0; i < 5000; i++) {
        deliver(run, stamped(START + i, i));
      }
    }
    try (Store store = Store.openExisting(file())) {
      RunSummary summary = store.runs().get(0);
      assertThat(summary.id()).isEqualTo(id);
      assertThat(summary.readings()).isEqualTo(5000);
      assertThat(summary.endMs()).hasValue(START + 4999);
      assertThat(store.load(id).events())
          .extracting(RunEvent::kind)
          .contains(EventKind.RECORDER_STARTED, EventKind.RECORDER_STOPPED);
    }
  }

  @Test
  void whatStandsInARunThatWasBrokenOffIsNotStoredAgain() throws Exception {
    long first;
    try (Store store = Store.open(file())) {
      first = store.beginRun(RIG, START);
      store.append(first, List.of(stamped(START, 1), stamped(START + 1000, 2), arrived(START, 1)));
    }
    long second;
    long elsewhere;
    RigFile other = RigReader.parse(RIG.text().replace("Heron Lane", "Mill Lane"), "mill.toml");
    try (Recorder recorder =
        Recorder.open(file(), RecorderSettings.USUAL.with(new SettableClock(START + 5000)))) {
      RecordedRun run = recorder.begin(RIG);
      second = run.id();
      // Delivered again; another value; one more; without a stamp of its own.
      deliverSafely(
          run,
          stamped(START + 1000, 2),
          stamped(START, 7),
          stamped(START + 2000, 3),
          arrived(START + 1000, 2));
      RecordedRun site = recorder.begin(other);
      elsewhere = site.id();
      deliverSafely(site, stamped(START + 1000, 2));
    }
    Series power = load(second).of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(3);
    assertThat(of(load(second), EventKind.DUPLICATE)).singleElement().matches(e -> e.count() == 1);
    assertThat(load(elsewhere).of(Channel.POWER).orElseThrow().size()).isEqualTo(1);
    try (Store store = Store.openExisting(file())) {
      assertThat(followed(second)).hasValue(first);
      // The reading that arrived before the run was begun moves its beginning.
      assertThat(store.beganMs(second)).isEqualTo(START + 1000);
      assertThat(followed(elsewhere)).isEmpty();
    }
  }

  @Test
  void aRunGoesOnFromTheOneOfItsRigFileNotOnlyOfItsSite() throws Exception {
    RigFile secondHeater = RigReader.parse(RIG.text(), "second.toml");
    long one;
    long two;
    try (Store store = Store.open(file())) {
      one = store.beginRun(RIG, START);
      store.append(one, List.of(stamped(START, 1)));
      two = store.beginRun(secondHeater, START);
      store.append(two, List.of(stamped(START, 2)));
    }
    SettableClock clock = new SettableClock(START + 5000);
    long oneAgain;
    long twoAgain;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      oneAgain = recorder.begin(RigReader.parse(RIG.text(), "/etc/heatwake/rig.toml")).id();
      twoAgain = recorder.begin(secondHeater).id();
    }
    assertThat(followed(oneAgain)).hasValue(one);
    assertThat(followed(twoAgain)).hasValue(two);
  }

  /** Two heaters of one site, each with a rig.toml in a folder of its own. */
  @Test
  void aRigOfTheSameNameInAnotherFolderIsAnotherRig() throws Exception {
    RigFile left = RigReader.parse(RIG.text(), "left/rig.toml");
    RigFile right = RigReader.parse(RIG.text().replace("/dev/null", "/dev/zero"), "right/rig.toml");
    long brokenLeft;
    long brokenRight;
    try (Store store = Store.open(file())) {
      brokenLeft = store.beginRun(left, START);
      store.append(brokenLeft, List.of(stamped(START, 1), stamped(START + 1000, 2)));
      brokenRight = store.beginRun(right, START);
      store.append(brokenRight, List.of(stamped(START, 1)));
    }
    long againLeft;
    long againRight;
    SettableClock clock = new SettableClock(START + 5000);
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      againLeft = recorder.begin(left).id();
      RecordedRun run = recorder.begin(right);
      againRight = run.id();
      // Delivered again; and what the left one's probe said too, by chance.
      deliverSafely(run, stamped(START, 1), stamped(START + 1000, 2));
    }
    assertThat(load(againRight).of(Channel.POWER).orElseThrow().size()).isEqualTo(1);
    assertThat(load(againRight).of(Channel.POWER).orElseThrow().timeMs(0)).isEqualTo(START + 1000);
    assertThat(followed(againLeft)).hasValue(brokenLeft);
    assertThat(followed(againRight)).hasValue(brokenRight);
  }

  @Test
  void whatWasStoredBeforeACleanStopIsNotStoredAgain() throws Exception {
    RigFile byAnotherPath = RigReader.parse(RIG.text(), "/etc/heatwake/rig.toml");
    RigFile secondHeater = RigReader.parse(RIG.text(), "second.toml");
    SettableClock clock = new SettableClock(START);
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      deliverSafely(recorder.begin(RIG), stamped(START, 1), stamped(START + 1000, 2));
    }
    long again;
    long second;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(byAnotherPath);
      again = run.id();
      deliverSafely(run, stamped(START + 1000, 2), stamped(START + 2000, 3));
      RecordedRun other = recorder.begin(secondHeater);
      second = other.id();
      deliverSafely(other, stamped(START + 1000, 2));
    }
    assertThat(load(again).of(Channel.POWER).orElseThrow().size()).isEqualTo(1);
    assertThat(of(load(again), EventKind.DUPLICATE)).hasSize(1);
    assertThat(load(second).of(Channel.POWER).orElseThrow().size()).isEqualTo(1);
    assertThat(followed(again)).isEmpty();
  }

  @Test
  void keepsTwoReadingsThatArriveInOneMillisecond() throws Exception {
    SettableClock clock = new SettableClock(START);
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliver(run, arrived(START, 1), arrived(START, 1), arrived(START, 2));
    }
    Series power = load(id).of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(3);
    assertThat(power.timeMs(2)).isEqualTo(START + 2);
    assertThat(power.value(2)).isEqualTo(2);
  }

  @Test
  void countsWhatCameTwiceAndWhatContradicts() throws Exception {
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliverSafely(run, stamped(START, 1), stamped(START, 1), stamped(START, 2));
      deliverSafely(run, stamped(START, 1), stamped(START + 1, 3));
    }
    Recording recording = load(id);
    assertThat(recording.of(Channel.POWER).orElseThrow().size()).isEqualTo(2);
    assertThat(recording.of(Channel.POWER).orElseThrow().value(0)).isEqualTo(1);
    assertThat(of(recording, EventKind.DUPLICATE))
        .singleElement()
        .satisfies(event -> assertThat(event.count()).isEqualTo(2));
    assertThat(of(recording, EventKind.TIME_CONFLICT)).hasSize(1);
  }

  @Test
  void keepsGoodValuesOfProbesWhoseClockIsWrong() throws Exception {
    SettableClock clock = new SettableClock(START);
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliver(run, stamped(5, 1));
      deliver(run, stamped(Long.MAX_VALUE, 2));
      deliver(run, stamped(START - 40L * 86_400_000, 3));
    }
    Recording recording = load(id);
    Series power = recording.of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(2);
    assertThat(power.timeMs(0)).isEqualTo(START);
    assertThat(power.timeMs(1)).isEqualTo(START + 1);
    assertThat(recording.startMs()).isEqualTo(START);
    // Kept, but no part of the run.
    assertThat(recording.leftOut())
        .containsExactly(new StampsLeftOut(Channel.POWER, 1, START - 40L * 86_400_000));
    assertThat(of(recording, EventKind.TIME_REFUSED))
        .extracting(RunEvent::count, RunEvent::text)
        .containsExactly(
            tuple(
                2L,
                "power gave the time 1970-01-01T00:00:00Z; the moment of arrival was taken"
                    + " instead; set the probe's clock"));
    assertThat(of(recording, EventKind.PROBE_CLOCK)).hasSize(1);
  }

  @Test
  void keepsAndCountsImpossibleValuesAndRefusesNone() throws Exception {
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliver(run, stamped(START, 1e9), stamped(START + 1, Double.NaN), stamped(START + 2, -1e9));
    }
    Recording recording = load(id);
    assertThat(recording.of(Channel.POWER).orElseThrow().size()).isEqualTo(2);
    assertThat(of(recording, EventKind.OUT_OF_RANGE))
        .extracting(RunEvent::count)
        .containsExactly(2L);
    assertThat(of(recording, EventKind.UNREADABLE)).hasSize(1);
  }

  @Test
  void recordsStepsOfTheClockWithTheirSize() throws Exception {
    SettableClock clock = new SettableClock(START);
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i = 0; i < 20; i++) {
        clock.passMs(1000);
        if (i == 5) {
          clock.stepMs(-7_200_000);
        }
        if (i == 10) {
          clock.stepMs(7_200_000 + 3_600_000);
        }
        deliver(run, arrived(run.nowMs(), i));
      }
      clock.passMs(2000);
      deliverSafely(run, arrived(run.nowMs(), 20));
    }
    Recording recording = load(id);
    Series power = recording.of(Channel.POWER).orElseThrow();
    assertThat(power.size()).isEqualTo(21);
    for (int i = 0; i < 10; i++) {
      assertThat(power.timeMs(i)).isEqualTo(START + 1000L * (i + 1));
    }
    assertThat(power.timeMs(10)).isEqualTo(START + 11_000 + 3_600_000);
    assertThat(of(recording, EventKind.CLOCK_STEP))
        .extracting(RunEvent::text)
        .containsExactly(
            "the logger's clock was set back by 7200.0 s; so as not to record one moment twice, the"
                + " run's time is 7200.0 s ahead of it from here",
            "the logger's clock was set forward by 10800.0 s; the run" + " follows it");
  }

  @Test
  void tellsOfSilenceWithStartAndEnd() throws Exception {
    SettableClock clock = new SettableClock(START);
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i = 0; i < 5; i++) {
        clock.passMs(1000);
        deliverSafely(run, arrived(run.nowMs(), i));
      }
      clock.passMs(60_000);
      deliverSafely(run); // wakes the writer, as its own timer would
      Thread.sleep(1000);
      clock.passMs(1000);
      deliverSafely(run, arrived(run.nowMs(), 5));
    }
    assertThat(of(load(id), EventKind.PROBE_SILENT))
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.startMs()).isEqualTo(START + 5000);
              assertThat(event.endMs()).hasValue(START + 66_000);
              assertThat(event.text()).startsWith("power has sent nothing for 60 s; stated is one");
            });
  }

  @Test
  void aLockedDatabaseLosesNothing() throws Exception {
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      deliverSafely(run, stamped(START, 0));
      AtomicBoolean acknowledgedWhileLocked = new AtomicBoolean();
      AtomicBoolean locked = new AtomicBoolean(true);
      CountDownLatch all = new CountDownLatch(1000);
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        for (int i = 1; i <= 1000; i++) {
          run.deliver(
              new Delivery(
                  List.of(stamped(START + i, i)),
                  () -> {
                    acknowledgedWhileLocked.compareAndSet(false, locked.get());
                    all.countDown();
                  }));
        }
        while (recorder.blocked().isEmpty()) {
          Thread.sleep(50);
        }
        assertThat(recorder.blocked()).hasValue(file() + ": locked by another program");
        locked.set(false);
        statement.execute("ROLLBACK");
      }
      all.await();
      assertThat(acknowledgedWhileLocked).isFalse();
    }
    Recording recording = load(id);
    assertThat(recording.of(Channel.POWER).orElseThrow().size()).isEqualTo(1001);
    assertThat(of(recording, EventKind.STORE_BLOCKED))
        .singleElement()
        .satisfies(event -> assertThat(event.endMs()).isPresent());
  }

  @Test
  void memoryIsBoundedAndWhatIsDroppedIsCounted() throws Exception {
    long id;
    List<Long> acknowledged = new ArrayList<>();
    try (Recorder recorder =
        Recorder.open(file(), RecorderSettings.USUAL.withReadingsInMemory(100))) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      CountDownLatch last = new CountDownLatch(1);
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        for (int i = 0; i < 102; i++) {
          deliver(run, stamped(START + i, i));
        }
        Thread waits =
            new Thread(
                () -> {
                  try {
                    run.deliver(new Delivery(List.of(stamped(START + 500, 5)), last::countDown));
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                });
        waits.start();
        assertThat(last.await(1, TimeUnit.SECONDS)).isFalse();
        assertThat(acknowledged).isEmpty();
        assertThat(recorder.waiting()).isEqualTo(100);
        statement.execute("ROLLBACK");
      }
      last.await();
    }
    Recording recording = load(id);
    assertThat(recording.of(Channel.POWER).orElseThrow().size()).isEqualTo(101);
    assertThat(of(recording, EventKind.STORE_BLOCKED))
        .filteredOn(event -> event.subject().equals("memory"))
        .extracting(RunEvent::count)
        .containsExactly(2L);
  }

  @Test
  void aRunLeftByACrashIsEndedAtItsLastReading() {
    long left;
    long open;
    try (Store store = Store.open(file())) {
      left = store.beginRun(RIG, START);
      store.append(left, List.of(stamped(START + 10, 1)));
      store.addEvent(
          left, EventKind.SOURCE_LOST, "clips", START + 5, OptionalLong.empty(), 1, "unplugged");
    }
    try (Recorder first = Recorder.open(file(), RecorderSettings.USUAL)) {
      open = first.begin(RIG).id();
      try (Recorder second = Recorder.open(file(), RecorderSettings.USUAL);
          Store reader = Store.openExisting(file())) {
        assertThat(second.runs()).isEmpty();
        // The first recorder lives: its run stays as it is.
        assertThat(reader.runsWithoutEnd()).containsExactly(open);
      }
    }
    Recording recording = load(left);
    assertThat(of(recording, EventKind.RECORDER_STOPPED))
        .singleElement()
        .satisfies(event -> assertThat(event.startMs()).isEqualTo(START + 10));
    assertThat(of(recording, EventKind.SOURCE_LOST).get(0).endMs()).hasValue(START + 10);
  }

  @Test
  void cutsARunWithoutLosingAReadingBetween() throws Exception {
    SettableClock clock = new SettableClock(Instant.parse("2031-05-04T23:59:58Z").toEpochMilli());
    RecorderSettings daily = RecorderSettings.USUAL.with(clock).with(new Cut.Daily(ZoneOffset.UTC));
    long first;
    long second;
    try (Recorder recorder = Recorder.open(file(), daily)) {
      RecordedRun run = recorder.begin(RIG);
      first = run.id();
      run.began(EventKind.SOURCE_LOST, "clips", "unplugged");
      for (int i = 0; i < 50; i++) {
        clock.passMs(100);
        if (i % 10 == 0) {
          deliverSafely(run, arrived(run.nowMs(), i));
        } else {
          deliver(run, arrived(run.nowMs(), i));
        }
      }
      second = run.id();
    }
    assertThat(second).isNotEqualTo(first);
    Recording before = load(first);
    Recording after = load(second);
    Series one = before.of(Channel.POWER).orElseThrow();
    Series two = after.of(Channel.POWER).orElseThrow();
    assertThat(one.size() + two.size()).isEqualTo(50);
    assertThat(two.value(0)).isEqualTo(one.value(one.size() - 1) + 1);
    assertThat(of(before, EventKind.SOURCE_LOST).get(0).endMs()).isPresent();
    assertThat(of(after, EventKind.SOURCE_LOST)).hasSize(1);
    assertThat(of(after, EventKind.RECORDER_STARTED).get(0).text())
        .isEqualTo("goes on from run " + first);
  }

  @Test
  void gathersRepeatsIntoOneEvent() throws Exception {
    long id;
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      id = run.id();
      for (int i = 0; i < 100_000; i++) {
        run.happened(EventKind.UNREADABLE, "clips", "line \"\u001b[31mnoise\n" + i + "\"");
      }
    }
    assertThat(of(load(id), EventKind.UNREADABLE))
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.count()).isEqualTo(100_000);
              assertThat(event.text()).isEqualTo("line \" [31mnoise 0\"");
            });
  }

  @Test
  void saysWhenTheDatabaseCannotBeOpened() throws SQLException {
    assertThatThrownBy(() -> Recorder.open(folder, RecorderSettings.USUAL))
        .hasMessage(folder + ": is a folder; name a database file with --db");
  }
}
