package heatwake.collector.store;

import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.RunEvent;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/** What happened to a recording and what the person typed, in the database. */
final class RunLog {
  private final Connection connection;

  RunLog(Connection connection) {
    this.connection = connection;
  }

  /** Records an event and returns its number. */
  long addEvent(
      long run,
      EventKind kind,
      String subject,
      long startMs,
      OptionalLong endMs,
      long count,
      String text)
      throws SQLException {
    return Change.insert(
        connection,
        "INSERT INTO event (run, kind, subject, start_ms, end_ms, count, text)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?)",
        run,
        kind.id(),
        subject,
        startMs,
        endMs.isPresent() ? endMs.getAsLong() : null,
        count,
        text);
  }

  void updateEvent(long event, OptionalLong endMs, long count, String text) throws SQLException {
    Change.update(
        connection,
        "UPDATE event SET end_ms = ?, count = ?, text = ? WHERE id = ?",
        endMs.isPresent() ? endMs.getAsLong() : null,
        count,
        text,
        event);
  }

  /** Ends every event of a run that still lasts. */
  void endEvents(long run, long endMs) throws SQLException {
    Change.update(
        connection,
        "UPDATE event SET end_ms = max(start_ms, ?) WHERE run = ? AND end_ms IS NULL",
        endMs,
        run);
  }

  void addNote(long run, long timeMs, String text) throws SQLException {
    Change.update(
        connection, "INSERT INTO note (run, time_ms, text) VALUES (?, ?, ?)", run, timeMs, text);
  }

  List<RunEvent> events(long run) throws SQLException {
    List<RunEvent> events = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT kind, subject, start_ms, end_ms, count, text FROM event"
                + " WHERE run = ? ORDER BY start_ms, id")) {
      select.setLong(1, run);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          events.add(
              new RunEvent(
                  EventKind.of(row.getString(1)),
                  row.getString(2),
                  row.getLong(3),
                  RunTable.optionalLong(row, 4),
                  row.getLong(5),
                  row.getString(6)));
        }
      }
    }
    return events;
  }

  /** The kinds of event that a run has. */
  Set<EventKind> kinds(long run) throws SQLException {
    Set<EventKind> kinds = EnumSet.noneOf(EventKind.class);
    try (PreparedStatement select =
        connection.prepareStatement("SELECT DISTINCT kind FROM event WHERE run = ?")) {
      select.setLong(1, run);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          kinds.add(EventKind.of(row.getString(1)));
        }
      }
    }
    return kinds;
  }

  /** What the events of one kind say. */
  List<String> texts(long run, EventKind kind) throws SQLException {
    List<String> texts = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement("SELECT text FROM event WHERE run = ? AND kind = ?")) {
      select.setLong(1, run);
      select.setString(2, kind.id());
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          texts.add(row.getString(1));
        }
      }
    }
    return texts;
  }

  List<Note> notes(long run) throws SQLException {
    List<Note> notes = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT time_ms, text FROM note WHERE run = ? ORDER BY time_ms, id")) {
      select.setLong(1, run);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          notes.add(new Note(row.getLong(1), row.getString(2)));
        }
      }
    }
    return notes;
  }
}
