package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * The keys under which readings are stored. Numbers of segments and channels are given out in the
 * database and remembered here, until {@link #forget} is called because a transaction failed.
 */
final class KeyBook {
  private static final Place NOWHERE = new Place(Long.MIN_VALUE, Long.MIN_VALUE);

  private final Connection connection;
  private final Map<Place, Long> segments = new HashMap<>();
  private final Map<Channel, Integer> numbers = new EnumMap<>(Channel.class);

  // Nearly every reading lies where the one before it did: that one is not looked up.
  private Place lastPlace = NOWHERE;
  private long lastSegment;

  /** A run's part of one window of the time line. */
  private record Place(long run, long window) {}

  KeyBook(Connection connection) {
    this.connection = connection;
  }

  /** To be called before a rollback: numbers given out since the last commit are taken back. */
  void forget() {
    segments.clear();
    numbers.clear();
    lastPlace = NOWHERE;
  }

  /**
   * The key of a reading.
   *
   * @throws SQLException if the database cannot be written, or holds all the runs it can
   */
  long key(long run, Channel channel, long timeMs) throws SQLException {
    return ReadingKey.of(segment(run, ReadingKey.window(timeMs)), timeMs, number(channel));
  }

  /** The key of a reading, if a run has any of that time and channel to look among. */
  OptionalLong knownKey(long run, Channel channel, long timeMs) throws SQLException {
    long window = ReadingKey.window(timeMs);
    OptionalLong segment = find("SELECT id FROM segment WHERE run = ? AND window = ?", run, window);
    OptionalLong number = find("SELECT number FROM channel WHERE id = ?", channel.id());
    return segment.isEmpty() || number.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(ReadingKey.of(segment.getAsLong(), timeMs, (int) number.getAsLong()));
  }

  private OptionalLong find(String sql, Object... values) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        select.setObject(i + 1, values[i]);
      }
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }

  private long segment(long run, long window) throws SQLException {
    if (lastPlace.run != run || lastPlace.window != window) {
      Place place = new Place(run, window);
      Long segment = segments.get(place);
      if (segment == null) {
        segment = findOrAddSegment(run, window);
        segments.put(place, segment);
      }
      lastPlace = place;
      lastSegment = segment;
    }
    return lastSegment;
  }

  private int number(Channel channel) throws SQLException {
    Integer number = numbers.get(channel);
    if (number == null) {
      number = findOrAddNumber(channel);
      numbers.put(channel, number);
    }
    return number;
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
}
