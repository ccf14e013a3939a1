package heatwake.collector.store;

import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * The database's schema and its versions. Each version is a script that brings the one before it up
 * to date; {@code PRAGMA user_version} says which a file has.
 */
final class Schema {
  /** Version that this program writes. */
  static final int PRESENT = 2;

  /** Marks the file as ours in its header: "HtWk". */
  static final int APPLICATION_ID = 0x4874576B;

  /**
   * Version that can still be read as it is; the scripts since then add what recorders alone use.
   */
  private static final int READABLE = 1;

  private Schema() {}

  /** Makes sure that a database can be read, which may be all that is allowed. */
  static void requireReadable(Connection connection, Path file) throws SQLException {
    int version = pragma(connection, "user_version");
    if (version < READABLE) {
      bringUpToDate(connection, file);
    } else {
      refuseForeign(connection, file, version);
    }
  }

  /** Brings a database to the present schema. */
  static void bringUpToDate(Connection connection, Path file) throws SQLException {
    int version = pragma(connection, "user_version");
    refuseForeign(connection, file, version);
    if (version == PRESENT) {
      return;
    }
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate("BEGIN IMMEDIATE");
      // Another program may have done it while this one waited for the lock.
      for (int next = pragma(connection, "user_version") + 1; next <= PRESENT; next++) {
        for (String sql : script(next).split("(?m)^;$", -1)) {
          statement.executeUpdate(sql);
        }
        statement.executeUpdate("PRAGMA user_version = " + next);
      }
      statement.executeUpdate("PRAGMA application_id = " + APPLICATION_ID);
      // A fault on the way closes the connection, which rolls all of it back.
      statement.executeUpdate("COMMIT");
    }
  }

  private static void refuseForeign(Connection connection, Path file, int version)
      throws SQLException {
    if (version > PRESENT) {
      throw new MistakeException(
          file
              + ": written by a newer Heatwake (schema "
              + version
              + ", this one knows "
              + PRESENT
              + "); update Heatwake or name another file with --db");
    }
    int application = pragma(connection, "application_id");
    if (application != APPLICATION_ID
        && (version > 0 || pragma(connection, "schema_version") > 0)) {
      throw new MistakeException(
          file + ": an SQLite database of some other program; name another file with --db");
    }
  }

  static int pragma(Connection connection, String name) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + name)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }

  private static String script(int version) {
    String name = "schema-" + version + ".sql";
    try (InputStream in = Schema.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
