package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Reading;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/**
 * Readings put in by groups, one by one, and into a map that follows the rule's own words: the
 * table and the answer must be the same however they are grouped.
 */
class ReadingWriterTest {
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final long RUN = 1;
  private static final int ONE_BY_ONE = 1000;

  @Property(tries = 300)
  void groupsChangeNothing(
      @ForAll("batches") List<List<Reading>> batches, @ForAll @IntRange(min = 1, max = 9) int size)
      throws SQLException {
    Stored grouped = Stored.by(size, batches);

    assertThat(grouped).isEqualTo(Stored.by(ONE_BY_ONE, batches));
    assertThat(grouped).isEqualTo(Stored.byTheRule(batches));
  }

  /** Few channels, times and values, so that nearly every batch has all kinds of clashes. */
  @Provide
  Arbitrary<List<List<Reading>>> batches() {
    Arbitrary<Reading> reading =
        Combinators.combine(
                Arbitraries.of(Channel.WATER_IN, Channel.POWER, Channel.CURRENT),
                Arbitraries.longs().between(0, 40),
                Arbitraries.of(1.0, 2.0),
                Arbitraries.of(true, true, false))
            .as((channel, ms, value, own) -> new Reading(channel, START + ms, value, own));
    return reading.list().ofMaxSize(40).list().ofMinSize(1).ofMaxSize(5);
  }

  /** The table and the answers. */
  private record Stored(Map<String, Double> table, List<Appended> answers) {

    static Stored by(int groupSize, List<List<Reading>> batches) throws SQLException {
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:");
          Statement statement = connection.createStatement()) {
        Schema.bringUpToDate(connection, Path.of("memory"));
        statement.executeUpdate(
            "INSERT INTO run (id, site, began_ms, rig_name, rig) VALUES (1, 'Heron Lane', 0, '', '')");
        List<Appended> answers = new ArrayList<>();
        try (ReadingWriter writer =
            new ReadingWriter(connection, new KeyBook(connection), groupSize)) {
          for (List<Reading> batch : batches) {
            statement.executeUpdate("BEGIN IMMEDIATE");
            answers.add(writer.append(RUN, batch));
            statement.executeUpdate("COMMIT");
          }
        }
        return new Stored(table(statement), answers);
      }
    }

    private static Map<String, Double> table(Statement statement) throws SQLException {
      Map<String, Double> table = new HashMap<>();
      try (ResultSet row =
          statement.executeQuery("SELECT channel, time_ms, value FROM readings WHERE run = 1")) {
        while (row.next()) {
          table.put(key(Channel.of(row.getString(1)), row.getLong(2)), row.getDouble(3));
        }
      }
      return table;
    }

    /** Of a batch, all whose place is free come first; then those that found it taken. */
    static Stored byTheRule(List<List<Reading>> batches) {
      Map<String, Double> table = new HashMap<>();
      List<Appended> answers = new ArrayList<>();
      for (List<Reading> batch : batches) {
        List<Reading> late = new ArrayList<>();
        for (Reading reading : batch) {
          if (table.putIfAbsent(key(reading.channel(), reading.timeMs()), reading.value())
              != null) {
            late.add(reading);
          }
        }
        int stored = batch.size() - late.size();
        List<Reading> duplicates = new ArrayList<>();
        List<Reading> conflicts = new ArrayList<>();
        for (Reading reading : late) {
          if (!reading.stampedByProbe()) {
            long timeMs = reading.timeMs() + 1;
            while (table.putIfAbsent(key(reading.channel(), timeMs), reading.value()) != null) {
              timeMs++;
            }
            stored++;
          } else if (table.get(key(reading.channel(), reading.timeMs())) == reading.value()) {
            duplicates.add(reading);
          } else {
            conflicts.add(reading);
          }
        }
        answers.add(new Appended(stored, duplicates, conflicts));
      }
      return new Stored(table, answers);
    }

    private static String key(Channel channel, long timeMs) {
      return channel + " " + timeMs;
    }
  }
}
