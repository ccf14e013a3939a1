package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Other programs at the database while it is being recorded into. */
@Timeout(120)
class CompanyTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("heatwake.db");
  }

  private static void deliverSafely(RecordedRun run, int from, int count) throws Exception {
    CountDownLatch safe = new CountDownLatch(count);
    for (int i = from; i < from + count; i++) {
      run.deliver(
          new Delivery(List.of(new Reading(Channel.POWER, START + i, i, true)), safe::countDown));
    }
    safe.await();
  }

  /** Two of one rig would take its ports and its session at the broker from each other. */
  @Test
  void aSecondRecorderOfTheSameRigIsRefusedAndOneOfAnotherIsNot() throws Exception {
    RigFile other = RigReader.parse("[[probe]]\nchannel = \"power\"\n", "other.toml");
    long again;
    try (Recorder first = Recorder.open(file(), RecorderSettings.USUAL);
        Recorder second = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = first.begin(RIG);
      assertThatThrownBy(() -> second.begin(RIG))
          .isInstanceOf(MistakeException.class)
          .hasMessage(
              file()
                  + ": rig.toml is being recorded into it already, as run "
                  + run.id()
                  + "; stop that recorder first");
      assertThat(second.begin(other).id()).isEqualTo(run.id() + 1);
      deliverSafely(run, 0, 10);
    }
    try (Recorder later = Recorder.open(file(), RecorderSettings.USUAL)) {
      again = later.begin(RIG).id();
    }
    assertThat(again).isEqualTo(3);
  }

  @Test
  void readerThatLingersHoldsNothingUp() throws Exception {
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      deliverSafely(run, 0, 100);
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN");
        assertThat(count(statement)).isEqualTo(100);
        // Until the log is longer than the thousand pages after which it is usually taken over.
        for (int i = 100; i < 5100; i += 5) {
          deliverSafely(run, i, 5);
        }
        assertThat(Files.size(Path.of(file() + "-wal"))).isGreaterThan(1000 * 4096);
        assertThat(recorder.blocked()).isEmpty();
        assertThat(count(statement)).isEqualTo(100);
        statement.execute("ROLLBACK");
        assertThat(count(statement)).isEqualTo(5100);
      }
      try (Store store = Store.openExisting(file())) {
        assertThat(store.load(run.id()).events())
            .noneMatch(event -> event.kind() == EventKind.STORE_BLOCKED);
      }
    }
  }

  private static int count(Statement statement) throws Exception {
    try (ResultSet row = statement.executeQuery("SELECT count(*) FROM reading")) {
      return row.getInt(1);
    }
  }

  @Test
  void noteIsTakenWhileRecording() throws Exception {
    try (Recorder recorder = Recorder.open(file(), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      for (int i = 0; i < 20; i++) {
        deliverSafely(run, 100 * i, 100);
        try (Store store = Store.openExisting(file())) {
          long recorded = store.runsWithoutEnd().get(0);
          store.addNote(recorded, START + i, "note " + i);
        }
      }
      try (Store store = Store.openExisting(file())) {
        assertThat(store.readingCount(run.id())).isEqualTo(2000);
        assertThat(store.load(run.id()).notes())
            .hasSize(20)
            .contains(new Note(START + 19, "note 19"));
      }
    }
  }
}
