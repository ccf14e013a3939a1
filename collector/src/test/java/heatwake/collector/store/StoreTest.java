package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.series.StampsLeftOut;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real SQLite files. */
class StoreTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("new/heatwake.db");
  }

  private static Reading stamped(Channel channel, long timeMs, double value) {
    return new Reading(channel, timeMs, value, true);
  }

  private static Reading arrived(Channel channel, long timeMs, double value) {
    return new Reading(channel, timeMs, value, false);
  }

  @Test
  void givesBackWhatItWasGiven() {
    try (Store store = Store.open(file())) {
      long run = store.beginRun(RIG, START);
      store.append(
          run,
          List.of(
              stamped(Channel.WATER_IN, START + 2000, 26.1),
              stamped(Channel.POWER, START, 2750),
              // Late, from before the run began, and from another century.
              stamped(Channel.WATER_IN, START - 5000, 26.3),
              stamped(Channel.POWER, Instant.parse("2099-01-01T00:00:00Z").toEpochMilli(), 1),
              stamped(Channel.POWER, Instant.parse("2000-01-01T00:00:00Z").toEpochMilli(), 2)));
      store.addEvent(
          run, EventKind.SOURCE_LOST, "clips", START, OptionalLong.empty(), 3, "unplugged");
      store.addNote(run, START + 1, "bypass moved");
      Recording recording = store.load(run);

      assertThat(recording.rig()).isEqualTo(RIG.rig());
      Series water = recording.of(Channel.WATER_IN).orElseThrow();
      assertThat(water.size()).isEqualTo(2);
      assertThat(water.timeMs(0)).isEqualTo(START - 5000);
      assertThat(water.value(1)).isEqualTo(26.1 + 273.15);
      Series power = recording.of(Channel.POWER).orElseThrow();
      // Those of the other centuries are kept, but are no part of the run.
      assertThat(power.size()).isEqualTo(1);
      assertThat(power.value(0)).isEqualTo(2750);
      assertThat(recording.startMs()).isEqualTo(START - 5000);
      assertThat(recording.endMs()).isEqualTo(START + 2000);
      assertThat(recording.leftOut()).extracting(StampsLeftOut::readings).containsExactly(1L, 1L);
      assertThat(store.readingCount(run)).isEqualTo(5);
      assertThat(recording.events())
          .containsExactly(
              new RunEvent(
                  EventKind.SOURCE_LOST, "clips", START, OptionalLong.empty(), 3, "unplugged"));
      assertThat(recording.notes()).containsExactly(new Note(START + 1, "bypass moved"));
      assertThat(store.rigText(run)).isEqualTo(RIG.text());
    }
  }

  @Test
  void keepsEachReadingOnce() {
    try (Store store = Store.open(file())) {
      long run = store.beginRun(RIG, START);
      Reading first = stamped(Channel.POWER, START, 2750);
      Reading other = stamped(Channel.POWER, START, 2751);
      assertThat(store.append(run, List.of(first)))
          .isEqualTo(new Appended(1, List.of(), List.of()));
      assertThat(store.append(run, List.of(first, other)))
          .isEqualTo(new Appended(0, List.of(first), List.of(other)));
      assertThat(
              store
                  .append(
                      run,
                      List.of(
                          arrived(Channel.POWER, START, 2750),
                          arrived(Channel.POWER, START, 2752),
                          arrived(Channel.CURRENT, START, 12)))
                  .stored())
          .isEqualTo(3);
      List<String> seen = new ArrayList<>();
      store.forEachReading(
          run,
          (channel, timeMs, value) -> seen.add(channel + " " + (timeMs - START) + " " + value));
      assertThat(seen)
          .containsExactlyInAnyOrder(
              "power 0 2750.0", "power 1 2750.0", "power 2 2752.0", "current 0 12.0");
    }
  }

  @Test
  void refusesWhatIsNoNumberAndStoresNothingOfIt() {
    try (Store store = Store.open(file())) {
      long run = store.beginRun(RIG, START);
      assertThatThrownBy(
              () ->
                  store.append(
                      run,
                      List.of(
                          stamped(Channel.POWER, START, 1),
                          stamped(Channel.POWER, START + 1, Double.NaN))))
          .isInstanceOf(IllegalArgumentException.class);
      assertThat(store.readingCount(run)).isZero();
      store.append(run, List.of(stamped(Channel.POWER, START, 1)));
      assertThat(store.readingCount(run)).isEqualTo(1);
    }
  }

  @Test
  void severalThingsInOneCommitAreAllOrNothing() {
    try (Store store = Store.open(file())) {
      assertThatThrownBy(
              () ->
                  store.inOneCommit(
                      () -> {
                        long run = store.beginRun(RIG, START);
                        store.append(run, List.of(stamped(Channel.POWER, START, 1)));
                        throw new IllegalStateException("half way");
                      }))
          .hasMessage("half way");
      assertThat(store.runs()).isEmpty();
    }
  }

  @Test
  void listsRuns() {
    try (Store store = Store.open(file())) {
      long done = store.beginRun(RIG, START);
      store.append(
          done,
          List.of(stamped(Channel.POWER, START + 10, 1), stamped(Channel.POWER, START + 20, 2)));
      store.endRun(done, START + 500);
      long going = store.beginRun(RIG, START + 1000);
      assertThat(store.runs())
          .containsExactly(
              new RunSummary(done, "Heron Lane", START + 10, OptionalLong.of(START + 20), 2),
              new RunSummary(going, "Heron Lane", START + 1000, OptionalLong.empty(), 0));
      assertThat(store.runsWithoutEnd()).containsExactly(going);
      assertThatThrownBy(() -> store.load(7))
          .isInstanceOf(MistakeException.class)
          .hasMessage(file() + ": has no run 7; its runs are " + done + ", " + going);
    }
  }

  @Test
  void readersSeeEachCommitWhileTheWriterHoldsTheNext() {
    try (Store writer = Store.open(file());
        Store reader = Store.openExisting(file())) {
      long run = writer.beginRun(RIG, START);
      writer.append(run, List.of(stamped(Channel.POWER, START, 1)));
      writer.inOneCommit(
          () -> {
            writer.append(run, List.of(stamped(Channel.POWER, START + 1, 1)));
            assertThat(reader.readingCount(run)).isEqualTo(1);
          });
      assertThat(reader.readingCount(run)).isEqualTo(2);
    }
  }

  @Test
  void refusesFilesThatAreNotItsOwn() throws IOException, SQLException {
    Path none = folder.resolve("none.db");
    assertThatThrownBy(() -> Store.openExisting(none))
        .isInstanceOf(MistakeException.class)
        .hasMessage(
            none + ": no such database; record or import a run first, or name another with --db");
    assertThat(none).doesNotExist();

    Path text = Files.writeString(folder.resolve("text.db"), "no database at all. ".repeat(100));
    assertThatThrownBy(() -> Store.open(text))
        .isInstanceOf(MistakeException.class)
        .hasMessage(text + ": not a Heatwake database, or damaged; name another file with --db");
    assertThat(text).hasContent("no database at all. ".repeat(100));

    Path foreign = folder.resolve("foreign.db");
    sql(foreign, "CREATE TABLE a (b)");
    assertThatThrownBy(() -> Store.open(foreign))
        .isInstanceOf(MistakeException.class)
        .hasMessage(
            foreign + ": an SQLite database of some other program; name another file with --db");

    Store.open(file()).close();
    sql(file(), "PRAGMA user_version = 99");
    assertThatThrownBy(() -> Store.open(file()))
        .isInstanceOf(MistakeException.class)
        .hasMessageContaining("written by a newer Heatwake (schema 99");
  }

  private static void sql(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  @Test
  void viewsOfOneRunTouchThatRunOnly() throws SQLException {
    Store.open(file()).close();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("EXPLAIN QUERY PLAN SELECT * FROM readings WHERE run = 1")) {
      List<String> plan = new ArrayList<>();
      while (row.next()) {
        plan.add(row.getString("detail"));
      }
      assertThat(plan)
          .anyMatch(step -> step.startsWith("SEARCH s USING") && step.contains("run=?"))
          .anyMatch(
              step -> step.equals("SEARCH r USING INTEGER PRIMARY KEY (rowid>? AND rowid<?)"));
    }
  }
}
