package heatwake.collector.store;

import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.sqlite.SQLiteConfig;

/**
 * Opens a database that may be read but not written, as on a mounted stick or of another user, by
 * SQLite's own means (sqlite.org, "Uniform Resource Identifiers" and "Write-Ahead Logging", section
 * Read-Only Databases). While a recorder keeps its log and its index beside it, those are read too.
 * Where there is no log, nothing is missing from the file itself, and it is read as one that nobody
 * changes: SQLite then wants no files beside it.
 */
final class ReadOnlyFile {
  private ReadOnlyFile() {}

  /**
   * Opens a file for reading.
   *
   * @return empty where it may not even be read
   * @throws MistakeException if what was stored last lies in a log that cannot be read from here
   */
  static Optional<Store> open(Path file, Opening.Maker maker) {
    if (!Files.isReadable(file)) {
      return Optional.empty();
    }
    Optional<Store> beside = open(file, "mode=ro", maker);
    if (beside.isPresent()) {
      return beside;
    }
    Path log = Path.of(file.toAbsolutePath() + "-wal");
    if (holdsReadings(log)) {
      throw new MistakeException(
          file
              + ": its latest readings lie in "
              + log.getFileName()
              + ", which cannot be read in a folder that cannot be written; copy both files to one"
              + " that can");
    }
    return open(file, "immutable=1", maker);
  }

  private static boolean holdsReadings(Path log) {
    try {
      return Files.exists(log) && Files.size(log) > 0;
    } catch (IOException hidden) {
      return true;
    }
  }

  private static Optional<Store> open(Path file, String how, Opening.Maker maker) {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(Opening.BUSY_TIMEOUT_MS);
    Connection connection = null;
    try {
      connection =
          config.createConnection(
              "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath() + "?" + how);
      Schema.requireReadable(connection, file);
      return Optional.of(maker.make(file, connection));
    } catch (SQLException shut) {
      Opening.closeQuietly(connection);
      return Optional.empty();
    } catch (MistakeException e) {
      Opening.closeQuietly(connection);
      throw e;
    }
  }
}
