package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Series;
import heatwake.collector.probe.Reading;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Readings in the database: packed under one key each, and found again. */
final class ReadingTable implements AutoCloseable {
  private static final String IN_SEGMENT = " FROM reading WHERE key BETWEEN ? AND ?";

  private final Connection connection;
  private final PreparedStatement insert;
  private final Map<Channel, Integer> numbers = new EnumMap<>(Channel.class);

  /** Run to window to segment. */
  private final Map<Long, Map<Long, Long>> segments = new HashMap<>();

  ReadingTable(Connection connection) throws SQLException {
    this.connection = connection;
    this.insert =
        connection.prepareStatement("INSERT OR IGNORE INTO reading (key, value) VALUES (?, ?)");
  }

  /** To be called before a rollback: what was looked up may be gone. */
  void forget() throws SQLException {
    insert.clearBatch();
    numbers.clear();
    segments.clear();
  }

  Appended append(long run, List<Reading> readings) throws SQLException {
    for (Reading reading : readings) {
      if (!Double.isFinite(reading.value())) {
        throw new IllegalArgumentException("not a finite value: " + reading);
      }
      bind(key(run, reading.channel(), reading.timeMs()), reading.value());
      insert.addBatch();
    }
    int[] changed = insert.executeBatch();
    int stored = 0;
    List<Reading> duplicates = new ArrayList<>();
    List<Reading> conflicts = new ArrayList<>();
    for (int i = 0; i < changed.length; i++) {
      Reading reading = readings.get(i);
      if (changed[i] == 1) {
        stored++;
      } else if (!reading.stampedByProbe()) {
        insertLater(run, reading);
        stored++;
      } else if (valueAt(key(run, reading.channel(), reading.timeMs())) == reading.value()) {
        duplicates.add(reading);
      } else {
        conflicts.add(reading);
      }
    }
    return new Appended(stored, duplicates, conflicts);
  }

  private void bind(long key, double value) throws SQLException {
    insert.setLong(1, key);
    insert.setDouble(2, value);
  }

  /** Two readings arrived in one millisecond: the second is kept at the next free one. */
  private void insertLater(long run, Reading reading) throws SQLException {
    long timeMs = reading.timeMs();
    do {
      timeMs++;
      bind(key(run, reading.channel(), timeMs), reading.value());
    } while (insert.executeUpdate() == 0);
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

  private long key(long run, Channel channel, long timeMs) throws SQLException {
    long window = ReadingKey.window(timeMs);
    Map<Long, Long> ofRun = segments.computeIfAbsent(run, absent -> new HashMap<>());
    Long segment = ofRun.get(window);
    if (segment == null) {
      segment = findOrAddSegment(run, window);
      ofRun.put(window, segment);
    }
    Integer number = numbers.get(channel);
    if (number == null) {
      number = findOrAddNumber(channel);
      numbers.put(channel, number);
    }
    return ReadingKey.of(segment, timeMs, number);
  }

  private long findOrAddSegment(long run, long window) throws SQLException {
    update("INSERT OR IGNORE INTO segment (run, window) VALUES (?, ?)", run, window);
    try (PreparedStatement select =
        connection.prepareStatement("SELECT id FROM segment WHERE run = ? AND window = ?")) {
      select.setLong(1, run);
      select.setLong(2, window);
      try (ResultSet row = select.executeQuery()) {
        row.next();
        long segment = row.getLong(1);
        if (segment > ReadingKey.GREATEST_SEGMENT) {
          throw new SQLException("the database holds all the runs it can; begin another file");
        }
        return segment;
      }
    }
  }

  private int findOrAddNumber(Channel channel) throws SQLException {
    update(
        "INSERT OR IGNORE INTO channel (number, id, unit)"
            + " SELECT ifnull(max(number) + 1, 0), ?, ? FROM channel",
        channel.id(),
        channel.storedUnit().code());
    try (PreparedStatement select =
        connection.prepareStatement("SELECT number FROM channel WHERE id = ?")) {
      select.setString(1, channel.id());
      try (ResultSet row = select.executeQuery()) {
        row.next();
        return row.getInt(1);
      }
    }
  }

  private void update(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      statement.executeUpdate();
    }
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
    insert.close();
  }
}
