package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Reading;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Readings in the database: packed under one key each, and found again. */
final class ReadingTable implements AutoCloseable {
  private static final String IN_SEGMENT = " FROM reading WHERE key BETWEEN ? AND ?";

  private final Connection connection;
  private final KeyBook keys;
  private final ReadingWriter writer;

  ReadingTable(Connection connection) throws SQLException {
    this.connection = connection;
    this.keys = new KeyBook(connection);
    this.writer = new ReadingWriter(connection, keys);
  }

  /** To be called before a rollback: what was looked up may be gone. */
  void forget() throws SQLException {
    keys.forget();
    writer.forget();
  }

  Appended append(long run, List<Reading> readings) throws SQLException {
    return writer.append(run, readings);
  }

  /** Whether a run holds a reading of this channel, time and value. */
  boolean holds(long run, Reading reading) throws SQLException {
    OptionalLong key = keys.knownKey(run, reading.channel(), reading.timeMs());
    if (key.isEmpty()) {
      return false;
    }
    try (PreparedStatement select =
        connection.prepareStatement("SELECT 1 FROM reading WHERE key = ? AND value = ?")) {
      select.setLong(1, key.getAsLong());
      select.setDouble(2, reading.value());
      try (ResultSet row = select.executeQuery()) {
        return row.next();
      }
    }
  }

  /**
   * Shows the readings of a run from a moment on, in order of time, those of one time by channel
   * number.
   */
  void visit(long run, long fromMs, ReadingVisitor visitor) throws SQLException {
    Channel[] channels = channelsByNumber();
    long fromWindow = ReadingKey.window(fromMs);
    for (Map.Entry<Long, Long> segment :
        segmentsByWindow(run).tailMap(fromWindow, true).entrySet()) {
      long window = segment.getKey();
      try (PreparedStatement select =
          connection.prepareStatement("SELECT key, value" + IN_SEGMENT + " ORDER BY key")) {
        select.setLong(
            1,
            window == fromWindow
                ? ReadingKey.of(segment.getValue(), fromMs, 0)
                : ReadingKey.first(segment.getValue()));
        select.setLong(2, ReadingKey.last(segment.getValue()));
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            long key = row.getLong(1);
            long timeMs = ReadingKey.timeMs(key, window);
            Channel channel = channels[ReadingKey.channelNumber(key)];
            if (channel == null) {
              visitor.ofUnknownChannel(timeMs);
            } else {
              visitor.reading(channel, timeMs, row.getDouble(2));
            }
          }
        }
      }
    }
  }

  /** Number of readings of a run before a moment. */
  long countBefore(long run, long ms) throws SQLException {
    return countBetween(run, Long.MIN_VALUE, ms);
  }

  /** Number of readings of a run from a moment up to another, without that. */
  long countBetween(long run, long fromMs, long untilMs) throws SQLException {
    long count = 0;
    long fromWindow = ReadingKey.window(fromMs);
    long untilWindow = ReadingKey.window(untilMs);
    for (Map.Entry<Long, Long> segment :
        segmentsByWindow(run).subMap(fromWindow, true, untilWindow, true).entrySet()) {
      long id = segment.getValue();
      count +=
          count(
              segment.getKey() == fromWindow ? ReadingKey.of(id, fromMs, 0) : ReadingKey.first(id),
              segment.getKey() == untilWindow
                  ? ReadingKey.of(id, untilMs, 0) - 1
                  : ReadingKey.last(id));
    }
    return count;
  }

  private long count(long firstKey, long lastKey) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("SELECT count(*)" + IN_SEGMENT)) {
      select.setLong(1, firstKey);
      select.setLong(2, lastKey);
      try (ResultSet row = select.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }

  long count(long run) throws SQLException {
    long count = 0;
    for (long segment : segmentsByWindow(run).values()) {
      count += count(ReadingKey.first(segment), ReadingKey.last(segment));
    }
    return count;
  }

  /** Time of the first reading of a run. */
  OptionalLong firstMs(long run) throws SQLException {
    for (Map.Entry<Long, Long> segment : segmentsByWindow(run).entrySet()) {
      OptionalLong key = edge("SELECT min(key)" + IN_SEGMENT, segment.getValue());
      if (key.isPresent()) {
        return OptionalLong.of(ReadingKey.timeMs(key.getAsLong(), segment.getKey()));
      }
    }
    return OptionalLong.empty();
  }

  /** Time of the last reading of a run. */
  OptionalLong lastMs(long run) throws SQLException {
    for (Map.Entry<Long, Long> segment : segmentsByWindow(run).descendingMap().entrySet()) {
      OptionalLong key = edge("SELECT max(key)" + IN_SEGMENT, segment.getValue());
      if (key.isPresent()) {
        return OptionalLong.of(ReadingKey.timeMs(key.getAsLong(), segment.getKey()));
      }
    }
    return OptionalLong.empty();
  }

  private OptionalLong edge(String sql, long segment) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(sql)) {
      select.setLong(1, ReadingKey.first(segment));
      select.setLong(2, ReadingKey.last(segment));
      try (ResultSet row = select.executeQuery()) {
        row.next();
        long value = row.getLong(1);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(value);
      }
    }
  }

  private NavigableMap<Long, Long> segmentsByWindow(long run) throws SQLException {
    NavigableMap<Long, Long> found = new TreeMap<>();
    try (PreparedStatement select =
        connection.prepareStatement("SELECT window, id FROM segment WHERE run = ?")) {
      select.setLong(1, run);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          found.put(row.getLong(1), row.getLong(2));
        }
      }
    }
    return found;
  }

  private Channel[] channelsByNumber() throws SQLException {
    Channel[] channels = new Channel[64];
    try (PreparedStatement select = connection.prepareStatement("SELECT number, id FROM channel");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        channels[row.getInt(1)] = Channel.find(row.getString(2)).orElse(null);
      }
    }
    return channels;
  }

  @Override
  public void close() throws SQLException {
    writer.close();
  }
}
