package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Series;
import heatwake.collector.probe.Reading;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
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

  /** Shows all readings of a run, in order of time, those of one time by channel number. */
  void visit(long run, ReadingVisitor visitor) throws SQLException {
    Channel[] channels = channelsByNumber();
    for (Map.Entry<Long, Long> segment : segmentsByWindow(run).entrySet()) {
      try (PreparedStatement select =
          connection.prepareStatement("SELECT key, value" + IN_SEGMENT + " ORDER BY key")) {
        select.setLong(1, ReadingKey.first(segment.getValue()));
        select.setLong(2, ReadingKey.last(segment.getValue()));
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            long key = row.getLong(1);
            Channel channel = channels[ReadingKey.channelNumber(key)];
            if (channel != null) {
              visitor.reading(channel, ReadingKey.timeMs(key, segment.getKey()), row.getDouble(2));
            }
          }
        }
      }
    }
  }

  /** All readings of a run as series in SI. */
  Map<Channel, Series> series(long run) throws SQLException {
    Map<Channel, Series.Builder> builders = new EnumMap<>(Channel.class);
    Map<Channel, Unit> units = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      builders.put(channel, Series.of(channel));
      units.put(channel, channel.storedUnit());
    }
    visit(
        run,
        (channel, timeMs, value) ->
            builders.get(channel).add(timeMs, units.get(channel).toSi(value)));
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    builders.forEach((channel, builder) -> series.put(channel, builder.build()));
    return series;
  }

  long count(long run) throws SQLException {
    long count = 0;
    for (long segment : segmentsByWindow(run).values()) {
      count += edge("SELECT count(*)" + IN_SEGMENT, segment).orElse(0);
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
