package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read bit by bit is held against what is read at one go, by a store of its own. */
class RunFollowerTest {
  /** A moment shortly before the border between two segments of the time line (2^36 ms). */
  private static final long BEFORE_A_BORDER = (28L << 36) - 3_600_000;

  private static final long START = 1_935_684_000_000L;
  private static final long MINUTE = 60_000;
  private static final RigFile RIG =
      RigReader.parseForImport("[site]\nname = \"Heron Lane\"\n", "rig.toml");
  private static final List<Channel> CHANNELS =
      List.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.PRESSURE_DISCHARGE);

  @TempDir Path folder;
  private Path file;
  private Store writer;
  private Store reader;

  @BeforeEach
  void open() {
    file = folder.resolve("follow.db");
    writer = Store.open(file);
    reader = Store.openExisting(file);
  }

  @AfterEach
  void close() {
    reader.close();
    writer.close();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void anyOrderOfArrivalGivesWhatAWholeLoadGives(long seed) {
    Random random = new Random(seed);
    long begin = seed % 2 == 0 ? BEFORE_A_BORDER : START;
    long run = writer.beginRun(RIG, begin);
    RunFollower follower = reader.follow(run);
    List<Reading> waiting = new ArrayList<>();
    for (int look = 0; look < 60; look++) {
      for (int s = 0; s < 180; s += 2) {
        for (Channel channel : CHANNELS) {
          long timeMs = begin + (look * 180L + s) * 1000 + random.nextInt(900);
          waiting.add(new Reading(channel, timeMs, 20 + random.nextGaussian(), true));
        }
      }
      Collections.shuffle(waiting, random);
      // Some come at once, some minutes later, and now and then all that is still waiting, hours
      // late.
      int now = look % 20 == 19 ? waiting.size() : (int) (waiting.size() * random.nextDouble());
      writer.append(run, waiting.subList(0, now));
      waiting = new ArrayList<>(waiting.subList(now, waiting.size()));
      if (look == 30) {
        writer.addNote(run, begin, "bypass moved");
        writer.addEvent(
            run, EventKind.PROBE_SILENT, "power", begin, OptionalLong.empty(), 1, "silent");
      }
      if (random.nextInt(3) > 0) {
        assertSameBits(follower.read(), whole(run));
      }
    }
    writer.append(run, waiting);
    writer.endRun(run, begin + 3 * 3_600_000);
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void aReadingBeforeAllOthersIsFound() {
    long run = begun(60);
    RunFollower follower = reader.follow(run);
    follower.read();
    append(run, START - 300 * MINUTE, 7);
    assertThat(follower.read().startMs()).isEqualTo(START - 300 * MINUTE);
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void readingsInASilenceAreFound() {
    long run = begun(60);
    append(run, START + 300 * MINUTE, 7);
    append(run, START + 320 * MINUTE, 7);
    append(run, START + 340 * MINUTE, 7);
    RunFollower follower = reader.follow(run);
    follower.read();
    append(run, START + 200 * MINUTE, 8);
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void twoWritersAndAnotherRunDoNotDisturb() {
    long run = begun(60);
    RunFollower follower = reader.follow(run);
    follower.read();
    try (Store second = Store.openExisting(file)) {
      long other = second.beginRun(RIG, START);
      append(run, START + 61 * MINUTE, 1);
      second.append(other, List.of(new Reading(Channel.POWER, START + MINUTE, 2, true)));
      second.append(run, List.of(new Reading(Channel.POWER, START + 5 * MINUTE + 1, 3, true)));
      assertSameBits(follower.read(), whole(run));
      assertSameBits(second.follow(other).read(), whole(other));
    }
  }

  @Test
  void readingsOfAChannelThatOnlyANewerProgramKnowsDoNotDisturb() throws SQLException {
    long run = begun(60);
    RunFollower follower = reader.follow(run);
    follower.read();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement sql = connection.createStatement()) {
      sql.executeUpdate("INSERT INTO channel VALUES (60, 'water-colour', '1')");
      sql.executeUpdate("INSERT INTO reading SELECT DISTINCT (key >> 6 << 6) | 60, 1 FROM reading");
    }
    assertSameBits(follower.read(), whole(run));
    append(run, START + 61 * MINUTE, 1);
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void aRunThatWasPutInItsPlaceIsReadAsAWhole() throws SQLException {
    long run = begun(60);
    RunFollower follower = reader.follow(run);
    follower.read();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement sql = connection.createStatement()) {
      sql.executeUpdate("UPDATE run SET began_ms = began_ms + 1 WHERE id = " + run);
      sql.executeUpdate("UPDATE reading SET value = value + 1");
    }
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void aLookThatFailsLosesNothing() throws SQLException {
    long run = begun(60);
    RunFollower follower = reader.follow(run);
    follower.read();
    append(run, START + 5 * MINUTE + 1, 3);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement sql = connection.createStatement()) {
      sql.executeUpdate("ALTER TABLE note RENAME TO elsewhere");
      assertThatThrownBy(follower::read).isInstanceOf(StoreException.class);
      sql.executeUpdate("ALTER TABLE elsewhere RENAME TO note");
    }
    assertSameBits(follower.read(), whole(run));
  }

  @Test
  void aRunThatIsNotThereIsToldAndOthersStayReadable() {
    long run = begun(5);
    assertThatThrownBy(() -> reader.follow(99).read())
        .isInstanceOf(MistakeException.class)
        .hasMessageContaining("has no run 99");
    assertSameBits(reader.follow(run).read(), whole(run));
  }

  @Test
  void changesByOthersAreSeenAndOnesOwnAreNot() {
    long run = begun(5);
    long before = reader.changesByOthers();
    assertThat(reader.changesByOthers()).isEqualTo(before);
    reader.addNote(run, START, "mine");
    assertThat(reader.changesByOthers()).isEqualTo(before);
    append(run, START + 6 * MINUTE, 1);
    assertThat(reader.changesByOthers()).isNotEqualTo(before);
  }

  @Test
  void anotherFileInItsPlaceIsNoticed() throws Exception {
    assertThat(reader.isReplaced()).isFalse();
    Path other = folder.resolve("other.db");
    Store.open(other).close();
    writer.close();
    Files.move(other, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertThat(reader.isReplaced()).isTrue();
    Files.delete(file);
    assertThat(reader.isReplaced()).isTrue();
    reader.close();
    writer = Store.open(folder.resolve("a.db"));
    reader = Store.open(folder.resolve("b.db"));
  }

  private long begun(int minutes) {
    long run = writer.beginRun(RIG, START);
    List<Reading> readings = new ArrayList<>();
    for (int s = 0; s < minutes * 60; s++) {
      for (Channel channel : CHANNELS) {
        readings.add(new Reading(channel, START + s * 1000L, 20 + s / 1000.0, true));
      }
    }
    writer.append(run, readings);
    return run;
  }

  private void append(long run, long timeMs, double value) {
    writer.append(run, List.of(new Reading(Channel.POWER, timeMs, value, true)));
  }

  private Recording whole(long run) {
    try (Store another = Store.openExisting(file)) {
      return another.load(run);
    }
  }

  private static void assertSameBits(Recording followed, Recording whole) {
    assertThat(followed.run()).isEqualTo(whole.run());
    assertThat(followed.rig()).isEqualTo(whole.rig());
    assertThat(followed.startMs()).isEqualTo(whole.startMs());
    assertThat(followed.endMs()).isEqualTo(whole.endMs());
    assertThat(followed.notes()).isEqualTo(whole.notes());
    assertThat(followed.events()).isEqualTo(whole.events());
    assertThat(followed.series().keySet()).isEqualTo(whole.series().keySet());
    for (Channel channel : whole.series().keySet()) {
      Series one = followed.of(channel).orElseThrow();
      Series other = whole.of(channel).orElseThrow();
      assertThat(one.size()).isEqualTo(other.size());
      for (int i = 0; i < one.size(); i++) {
        assertThat(one.timeMs(i)).isEqualTo(other.timeMs(i));
        assertThat(Double.doubleToRawLongBits(one.value(i)))
            .isEqualTo(Double.doubleToRawLongBits(other.value(i)));
      }
    }
  }
}
