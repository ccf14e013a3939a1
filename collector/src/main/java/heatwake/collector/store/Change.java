package heatwake.collector.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;

/** One statement that changes rows. */
final class Change {
  private Change() {}

  /** Inserts a row and returns its number. */
  static long insert(Connection connection, String sql, Object... values) throws SQLException {
    update(connection, sql, values);
    try (PreparedStatement last = connection.prepareStatement("SELECT last_insert_rowid()");
        ResultSet row = last.executeQuery()) {
      row.next();
      return row.getLong(1);
    }
  }

  /**
   * Changes rows.
   *
   * @param values for the statement's question marks; null for a number that there is none of
   */
  static void update(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        if (values[i] == null) {
          statement.setNull(i + 1, Types.INTEGER);
        } else {
          statement.setObject(i + 1, values[i]);
        }
      }
      statement.executeUpdate();
    }
  }
}
