package heatwake.collector.store;

import heatwake.collector.probe.Reading;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.sqlite.SQLiteErrorCode;

/**
 * Puts readings into the database, each once.
 *
 * <p>They go in groups, one statement for many rows, because entering a statement costs more than
 * the row. A group in which one key is already taken is refused as a whole (SQLite's ABORT) and
 * then put in reading by reading; so groups are for speed alone, and what ends up in the table does
 * not depend on them.
 */
final class ReadingWriter implements AutoCloseable {
  /** Twice as many would save a twentieth of the time, half as many cost a tenth. */
  private static final int READINGS_IN_A_GROUP = 64;

  private final Connection connection;
  private final KeyBook keys;
  private final int groupSize;
  private final PreparedStatement group;
  private final PreparedStatement single;

  ReadingWriter(Connection connection, KeyBook keys) throws SQLException {
    this(connection, keys, READINGS_IN_A_GROUP);
  }

  /**
   * @param groupSize readings in a group; more than any batch has to put all in one by one
   */
  ReadingWriter(Connection connection, KeyBook keys, int groupSize) throws SQLException {
    this.connection = connection;
    this.keys = keys;
    this.groupSize = groupSize;
    this.group =
        connection.prepareStatement(
            "INSERT INTO reading (key, value) VALUES (?, ?)" + ", (?, ?)".repeat(groupSize - 1));
    this.single =
        connection.prepareStatement("INSERT OR IGNORE INTO reading (key, value) VALUES (?, ?)");
  }

  /** To be called before a rollback. */
  void forget() throws SQLException {
    single.clearBatch();
  }

  /**
   * Stores readings of a run, in the transaction under way.
   *
   * @throws IllegalArgumentException if a value is not finite
   */
  Appended append(long run, List<Reading> readings) throws SQLException {
    long[] keyOf = new long[readings.size()];
    for (int i = 0; i < keyOf.length; i++) {
      Reading reading = readings.get(i);
      if (!Double.isFinite(reading.value())) {
        throw new IllegalArgumentException("not a finite value: " + reading);
      }
      keyOf[i] = keys.key(run, reading.channel(), reading.timeMs());
    }
    BitSet taken = new BitSet();
    int next = 0;
    for (; next + groupSize <= keyOf.length; next += groupSize) {
      if (!insertGroup(keyOf, readings, next)) {
        insertEach(keyOf, readings, next, next + groupSize, taken);
      }
    }
    insertEach(keyOf, readings, next, keyOf.length, taken);
    return settle(run, keyOf, readings, taken);
  }

  /** Whether a group could be put in as a whole; if not, nothing of it was. */
  private boolean insertGroup(long[] keyOf, List<Reading> readings, int from) throws SQLException {
    for (int i = 0; i < groupSize; i++) {
      group.setLong(2 * i + 1, keyOf[from + i]);
      group.setDouble(2 * i + 2, readings.get(from + i).value());
    }
    try {
      group.executeUpdate();
      return true;
    } catch (SQLException fault) {
      if (SqlFault.primaryCode(fault) == SQLiteErrorCode.SQLITE_CONSTRAINT) {
        return false;
      }
      throw fault;
    }
  }

  /** Puts in those whose key is free, and marks the others. */
  private void insertEach(long[] keyOf, List<Reading> readings, int from, int to, BitSet taken)
      throws SQLException {
    for (int i = from; i < to; i++) {
      bind(keyOf[i], readings.get(i).value());
      single.addBatch();
    }
    int[] changed = single.executeBatch();
    for (int i = 0; i < changed.length; i++) {
      if (changed[i] == 0) {
        taken.set(from + i);
      }
    }
  }

  /** What is to become of the readings whose keys were taken. */
  private Appended settle(long run, long[] keyOf, List<Reading> readings, BitSet taken)
      throws SQLException {
    int stored = keyOf.length - taken.cardinality();
    List<Reading> duplicates = new ArrayList<>();
    List<Reading> conflicts = new ArrayList<>();
    for (int i = taken.nextSetBit(0); i >= 0; i = taken.nextSetBit(i + 1)) {
      Reading reading = readings.get(i);
      if (!reading.stampedByProbe()) {
        insertLater(run, reading);
        stored++;
      } else if (valueAt(keyOf[i]) == reading.value()) {
        duplicates.add(reading);
      } else {
        conflicts.add(reading);
      }
    }
    return new Appended(stored, duplicates, conflicts);
  }

  /** Two readings arrived in one millisecond: the second is kept at the next free one. */
  private void insertLater(long run, Reading reading) throws SQLException {
    long timeMs = reading.timeMs();
    do {
      timeMs++;
      bind(keys.key(run, reading.channel(), timeMs), reading.value());
    } while (single.executeUpdate() == 0);
  }

  private void bind(long key, double value) throws SQLException {
    single.setLong(1, key);
    single.setDouble(2, value);
  }

  private double valueAt(long key) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT value FROM reading WHERE key = ?")) {
      select.setLong(1, key);
      try (ResultSet row = select.executeQuery()) {
        row.next();
        return row.getDouble(1);
      }
    }
  }

  @Override
  public void close() throws SQLException {
    group.close();
    single.close();
  }
}
