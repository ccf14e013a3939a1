package heatwake.collector.store;

import heatwake.collector.rig.RigFile;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** The runs as they stand in their table: whose they are, when they began and ended. */
final class RunTable {
  private final Connection connection;
  private final ReadingTable readings;
  private final StampJudge judge;

  RunTable(Connection connection, ReadingTable readings, StampJudge judge) {
    this.connection = connection;
    this.readings = readings;
    this.judge = judge;
  }

  /** Begins a run, perhaps one that goes on from another; returns its number. */
  long begin(RigFile rig, long startMs, OptionalLong follows) throws SQLException {
    return Change.insert(
        connection,
        "INSERT INTO run (site, began_ms, follows, rig_name, rig) VALUES (?, ?, ?, ?, ?)",
        rig.rig().site().name(),
        startMs,
        follows.isPresent() ? follows.getAsLong() : null,
        rig.nameWithFolder(),
        rig.text());
  }

  void end(long run, long endMs) throws SQLException {
    Change.update(connection, "UPDATE run SET ended_ms = ? WHERE id = ?", endMs, run);
  }

  void beganAt(long run, long beganMs) throws SQLException {
    Change.update(connection, "UPDATE run SET began_ms = ? WHERE id = ?", beganMs, run);
  }

  Optional<RunRow> find(long run) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT began_ms, ended_ms, site, rig_name, rig FROM run WHERE id = ?")) {
      select.setLong(1, run);
      try (ResultSet row = select.executeQuery()) {
        return row.next()
            ? Optional.of(
                new RunRow(
                    row.getLong(1),
                    optionalLong(row, 2),
                    row.getString(3),
                    row.getString(4),
                    row.getString(5)))
            : Optional.empty();
      }
    }
  }

  /** The runs, the oldest first. */
  List<RunHeading> headings() throws SQLException {
    SiteNames names = siteNames();
    List<RunHeading> runs = new ArrayList<>();
    try (PreparedStatement select =
            connection.prepareStatement(
                "SELECT id, site, began_ms, ended_ms, rig_name FROM run ORDER BY id");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        long id = row.getLong(1);
        long beganMs = row.getLong(3);
        OptionalLong endedMs = optionalLong(row, 4);
        StampWindow window = judge.window(id, beganMs, endedMs, System.currentTimeMillis());
        runs.add(
            new RunHeading(
                id,
                row.getString(2),
                names.shown(row.getString(2), row.getString(5)),
                readings.firstMs(id, window.fromMs()).orElse(beganMs),
                endedMs.isEmpty()
                    ? endedMs
                    : OptionalLong.of(
                        readings.lastMs(id, window.untilMs()).orElse(endedMs.getAsLong()))));
      }
    }
    return runs;
  }

  private SiteNames siteNames() throws SQLException {
    SiteNames names = new SiteNames();
    try (PreparedStatement select =
            connection.prepareStatement("SELECT DISTINCT site, rig_name FROM run");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        names.add(row.getString(1), row.getString(2));
      }
    }
    return names;
  }

  /** Runs that have not been ended, the oldest first. */
  List<Long> withoutEnd() throws SQLException {
    List<Long> open = new ArrayList<>();
    try (PreparedStatement select =
            connection.prepareStatement("SELECT id FROM run WHERE ended_ms IS NULL ORDER BY id");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        open.add(row.getLong(1));
      }
    }
    return open;
  }

  static OptionalLong optionalLong(ResultSet row, int column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(value);
  }
}
