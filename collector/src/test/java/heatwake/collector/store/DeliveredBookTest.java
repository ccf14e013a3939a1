package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Marks of messages in real SQLite files. */
class DeliveredBookTest {
  private static final RigFile RIG =
      RigReader.parseForImport("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("h.db");
  }

  private static List<MessageMark> marks(String session, int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> new MessageMark(session, i, 1 + i % 65_535, -31L * i))
        .toList();
  }

  private long rows() throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT count(*) FROM delivered")) {
      return row.getLong(1);
    }
  }

  @Test
  void keepsTheLatestOfEachSession() throws Exception {
    try (Store store = Store.open(file())) {
      store.addDelivered(marks("one", 0, 700));
      store.addDelivered(marks("two", 0, 3));
      store.addDelivered(marks("one", 700, 3000));
      assertThat(store.delivered("one"))
          .containsExactlyElementsOf(marks("one", 3000 - MessageMark.KEPT, 3000));
      assertThat(store.delivered("two")).containsExactlyElementsOf(marks("two", 0, 3));
      assertThat(store.delivered("three")).isEmpty();
    }
    try (Store store = Store.open(file())) {
      store.addDelivered(marks("one", 3000, 3010));
      assertThat(store.delivered("one"))
          .containsExactlyElementsOf(marks("one", 3010 - MessageMark.KEPT, 3010));
      store.removeDelivered("one");
      store.removeDelivered("three");
      assertThat(store.delivered("one")).isEmpty();
      store.addDelivered(marks("one", 0, 2));
      assertThat(store.delivered("one")).containsExactlyElementsOf(marks("one", 0, 2));
    }
    assertThat(rows()).isEqualTo(3 + 2);
  }

  @Test
  void isPartOfTheCommit() {
    try (Store store = Store.open(file())) {
      store.addDelivered(marks("one", 0, 2));
      assertThatThrownBy(
              () ->
                  store.inOneCommit(
                      () -> {
                        store.addDelivered(marks("one", 2, 5));
                        store.addDelivered(marks("two", 0, 1));
                        throw new IllegalStateException("half way");
                      }))
          .hasMessage("half way");
      assertThat(store.delivered("one")).containsExactlyElementsOf(marks("one", 0, 2));
      assertThat(store.delivered("two")).isEmpty();
      store.addDelivered(marks("two", 0, 1));
      store.addDelivered(marks("one", 2, 4));
      assertThat(store.delivered("one")).containsExactlyElementsOf(marks("one", 0, 4));
      assertThat(store.delivered("two")).containsExactlyElementsOf(marks("two", 0, 1));
    }
  }

  /** A file as schema 1 made it. */
  private long schemaOne() throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement();
        InputStream script = Schema.class.getResourceAsStream("schema-1.sql")) {
      String text = new String(script.readAllBytes(), StandardCharsets.UTF_8);
      for (String sql : text.split("(?m)^;$", -1)) {
        statement.executeUpdate(sql);
      }
      statement.executeUpdate("PRAGMA user_version = 1");
      statement.executeUpdate("PRAGMA application_id = " + Schema.APPLICATION_ID);
      statement.executeUpdate(
          "INSERT INTO run (id, site, began_ms, ended_ms, rig_name, rig) VALUES"
              + " (3, 'Heron Lane', 1000, 9000, 'rig.toml', '[site]"
              + "\nname = \"Heron Lane\"\n')");
      statement.executeUpdate("INSERT INTO channel VALUES (0, 'power', 'W')");
      statement.executeUpdate("INSERT INTO segment VALUES (1, 3, 0)");
      statement.executeUpdate("INSERT INTO reading VALUES ((1 << 42) | (2000 << 6), 2750)");
    }
    return 3;
  }

  @Test
  void anOlderFileIsBroughtUpToDateWithAllThatIsInIt() throws Exception {
    long old = schemaOne();
    try (Store store = Store.open(file())) {
      assertThat(store.readingCount(old)).isEqualTo(1);
      long run = store.beginRun(RIG, 20_000);
      store.append(run, List.of(new Reading(Channel.POWER, 20_000, 2800, true)));
      store.addDelivered(marks("one", 0, 2));
      assertThat(store.delivered("one")).hasSize(2);
      assertThat(store.load(old).of(Channel.POWER).orElseThrow().value(0)).isEqualTo(2750);
    }
  }

  /** On a stick that may not be written, say; opened as {@link Opening} does it there. */
  @Test
  void anOlderFileThatMayOnlyBeReadIsReadAsItIs() throws Exception {
    long old = schemaOne();
    byte[] before = Files.readAllBytes(file());
    try (Store store = ReadOnlyFile.open(file(), Store::new).orElseThrow()) {
      assertThat(store.load(old).of(Channel.POWER).orElseThrow().value(0)).isEqualTo(2750);
    }
    assertThat(Files.readAllBytes(file())).isEqualTo(before);
  }
}
