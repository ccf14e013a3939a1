package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.StampsLeftOut;
import heatwake.collector.probe.Reading;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
   * Shows the readings of a run from a moment up to another, without that, in order of time, those
   * of one time by channel number.
   */
  void visit(long run, long fromMs, long untilMs, ReadingVisitor visitor) throws SQLException {
    Channel[] channels = channelsByNumber();
    for (Stretch stretch : stretches(run, fromMs, untilMs)) {
      try (PreparedStatement select =
          connection.prepareStatement("SELECT key, value" + IN_SEGMENT + " ORDER BY key")) {
        select.setLong(1, stretch.firstKey);
        select.setLong(2, stretch.lastKey);
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            long key = row.getLong(1);
            long timeMs = ReadingKey.timeMs(key, stretch.window);
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

  /** How many readings of each channel lie between two moments, and the time of the first. */
  List<StampsLeftOut> summary(long run, long fromMs, long untilMs) throws SQLException {
    Channel[] channels = channelsByNumber();
    List<StampsLeftOut> found = new ArrayList<>();
    for (Stretch stretch : stretches(run, fromMs, untilMs)) {
      try (PreparedStatement select =
          connection.prepareStatement(
              "SELECT min(key), count(*)" + IN_SEGMENT + " GROUP BY key & 63 ORDER BY key & 63")) {
        select.setLong(1, stretch.firstKey);
        select.setLong(2, stretch.lastKey);
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            long key = row.getLong(1);
            Channel channel = channels[ReadingKey.channelNumber(key)];
            if (channel != null) {
              found.add(
                  new StampsLeftOut(
                      channel, row.getLong(2), ReadingKey.timeMs(key, stretch.window)));
            }
          }
        }
      }
    }
    return found;
  }

  /** Keys of one segment. */
  private record Stretch(long window, long firstKey, long lastKey) {}

  /** Where the readings from a moment up to another lie, in order of time. */
  private List<Stretch> stretches(long run, long fromMs, long untilMs) throws SQLException {
    if (fromMs >= untilMs) {
      return List.of();
    }
    long fromWindow = ReadingKey.window(fromMs);
    long untilWindow = ReadingKey.window(untilMs);
    List<Stretch> stretches = new ArrayList<>();
    segmentsByWindow(run)
        .subMap(fromWindow, true, untilWindow, true)
        .forEach(
            (window, id) ->
                stretches.add(
                    new Stretch(
                        window,
                        window == fromWindow ? ReadingKey.of(id, fromMs, 0) : ReadingKey.first(id),
                        window == untilWindow
                            ? ReadingKey.of(id, untilMs, 0) - 1
                            : ReadingKey.last(id))));
    return stretches;
  }

  /** Number of readings of a run from a moment up to another, without that. */
  long countBetween(long run, long fromMs, long untilMs) throws SQLException {
    long count = 0;
    for (Stretch stretch : stretches(run, fromMs, untilMs)) {
      count += count(stretch.firstKey, stretch.lastKey);
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
    return countBetween(run, Long.MIN_VALUE, Long.MAX_VALUE);
  }

  /** Time of the first reading of a run. */
  OptionalLong firstMs(long run) throws SQLException {
    return firstMs(run, Long.MIN_VALUE);
  }

  /** Time of the first reading of a run that is not before a moment. */
  OptionalLong firstMs(long run, long fromMs) throws SQLException {
    for (Stretch stretch : stretches(run, fromMs, Long.MAX_VALUE)) {
      OptionalLong timeMs = edge("SELECT min(key)" + IN_SEGMENT, stretch);
      if (timeMs.isPresent()) {
        return timeMs;
      }
    }
    return OptionalLong.empty();
  }

  /** Time of the last reading of a run. */
  OptionalLong lastMs(long run) throws SQLException {
    return lastMs(run, Long.MAX_VALUE);
  }

  /** Time of the last reading of a run that is before a moment. */
  OptionalLong lastMs(long run, long untilMs) throws SQLException {
    List<Stretch> backwards = stretches(run, Long.MIN_VALUE, untilMs);
    Collections.reverse(backwards);
    for (Stretch stretch : backwards) {
      OptionalLong timeMs = edge("SELECT max(key)" + IN_SEGMENT, stretch);
      if (timeMs.isPresent()) {
        return timeMs;
      }
    }
    return OptionalLong.empty();
  }

  private OptionalLong edge(String sql, Stretch stretch) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(sql)) {
      select.setLong(1, stretch.firstKey);
      select.setLong(2, stretch.lastKey);
      try (ResultSet row = select.executeQuery()) {
        row.next();
        long key = row.getLong(1);
        return row.wasNull()
            ? OptionalLong.empty()
            : OptionalLong.of(ReadingKey.timeMs(key, stretch.window));
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
