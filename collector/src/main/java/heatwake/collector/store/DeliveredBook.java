package heatwake.collector.store;

import heatwake.collector.probe.MessageMark;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/**
 * The messages that are stored and may be sent again, of each session the latest {@value
 * MessageMark#KEPT}. Where the next one goes is remembered here, until {@link #forget} is called
 * because a transaction failed.
 */
final class DeliveredBook implements AutoCloseable {
  private static final int PLACE_BITS = 10;
  private static final String OF_SESSION = " FROM delivered WHERE slot BETWEEN ? AND ?";

  private final Connection connection;
  private final Map<String, Place> next = new HashMap<>();

  /** Made when it is first needed: a database that is only read may have no such table. */
  private PreparedStatement put;

  /** The slot of a session that is taken next. */
  private static final class Place {
    private final long session;
    private long number;

    private Place(long session, long number) {
      this.session = session;
      this.number = number;
    }

    private long take() {
      return first(session) | (number++ & (MessageMark.KEPT - 1));
    }
  }

  DeliveredBook(Connection connection) {
    this.connection = connection;
  }

  private static long first(long session) {
    return session << PLACE_BITS;
  }

  private static long last(long session) {
    return first(session) | (MessageMark.KEPT - 1);
  }

  /** To be called before a rollback. */
  void forget() throws SQLException {
    next.clear();
    if (put != null) {
      put.clearBatch();
    }
  }

  /** Keeps marks, each in place of the oldest of its session. */
  void add(List<MessageMark> marks) throws SQLException {
    if (put == null) {
      put =
          connection.prepareStatement(
              "INSERT OR REPLACE INTO delivered (slot, number, packet_id, digest)"
                  + " VALUES (?, ?, ?, ?)");
    }
    for (MessageMark mark : marks) {
      put.setLong(1, place(mark.session()).take());
      put.setLong(2, mark.number());
      put.setLong(3, mark.identifier());
      put.setLong(4, mark.digest());
      put.addBatch();
    }
    put.executeBatch();
  }

  private Place place(String session) throws SQLException {
    Place place = next.get(session);
    if (place == null) {
      long id = findOrAdd(session);
      place = new Place(id, latestSlot(id).orElse(last(id)) + 1);
      next.put(session, place);
    }
    return place;
  }

  private long findOrAdd(String session) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT OR IGNORE INTO session (name) VALUES (?)")) {
      insert.setString(1, session);
      insert.executeUpdate();
    }
    return find(session).orElseThrow();
  }

  private OptionalLong find(String session) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT id FROM session WHERE name = ?")) {
      select.setString(1, session);
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }

  private OptionalLong latestSlot(long session) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("SELECT slot" + OF_SESSION + " ORDER BY number DESC LIMIT 1")) {
      select.setLong(1, first(session));
      select.setLong(2, last(session));
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }

  /** The marks of a session, those of the earlier messages first. */
  List<MessageMark> of(String session) throws SQLException {
    List<MessageMark> marks = new ArrayList<>();
    OptionalLong id = find(session);
    if (id.isEmpty()) {
      return marks;
    }
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT number, packet_id, digest" + OF_SESSION + " ORDER BY number")) {
      select.setLong(1, first(id.getAsLong()));
      select.setLong(2, last(id.getAsLong()));
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          marks.add(new MessageMark(session, row.getLong(1), row.getLong(2), row.getLong(3)));
        }
      }
    }
    return marks;
  }

  /** Keeps nothing of a session any more. */
  void remove(String session) throws SQLException {
    OptionalLong id = find(session);
    if (id.isEmpty()) {
      return;
    }
    try (PreparedStatement delete = connection.prepareStatement("DELETE" + OF_SESSION)) {
      delete.setLong(1, first(id.getAsLong()));
      delete.setLong(2, last(id.getAsLong()));
      delete.executeUpdate();
    }
  }

  @Override
  public void close() throws SQLException {
    if (put != null) {
      put.close();
    }
  }
}
