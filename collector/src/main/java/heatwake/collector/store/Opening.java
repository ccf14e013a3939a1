package heatwake.collector.store;

import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TempStore;
import org.sqlite.SQLiteErrorCode;

/** Opens database files, and says plainly when one cannot be. */
final class Opening {
  static final int BUSY_TIMEOUT_MS = 5000;

  private static final int AGAIN_MS = 50;

  private Opening() {}

  /** Makes a store of an open connection. */
  interface Maker {
    Store make(Path file, Connection connection) throws SQLException;
  }

  static Store orMake(Path file, Maker maker) {
    Path folder = file.toAbsolutePath().getParent();
    try {
      if (folder != null) {
        Files.createDirectories(folder);
      }
    } catch (IOException e) {
      throw new MistakeException(
          file + ": its folder cannot be made; name another file with --db", e);
    }
    return toWrite(file, maker);
  }

  static Store existingToWrite(Path file, Maker maker) {
    requireThere(file);
    return toWrite(file, maker);
  }

  /** SQLite itself opens a file that may not be written, and fails at the first change only. */
  private static Store toWrite(Path file, Maker maker) {
    if (Files.isRegularFile(file) && !Files.isWritable(file)) {
      throw new NotWritableException(file, null);
    }
    return open(file, maker);
  }

  private static void requireThere(Path file) {
    if (!Files.exists(file)) {
      throw new MistakeException(
          file + ": no such database; record or import a run first, or name another with --db");
    }
  }

  static Store existing(Path file, Maker maker) {
    requireThere(file);
    if (!Files.isReadable(file)) {
      throw new MistakeException(
          file + ": cannot be read; check its permissions or name another with --db");
    }
    try {
      return open(file, maker);
    } catch (NotWritableException unwritable) {
      return ReadOnlyFile.open(file, maker).orElseThrow(() -> unwritable);
    }
  }

  /** The file, its folder or the disk it is on may not be written. */
  private static final class NotWritableException extends MistakeException {
    private static final long serialVersionUID = 1L;

    NotWritableException(Path file, SQLException fault) {
      super(file + ": cannot be written; check its permissions or name another with --db", fault);
    }
  }

  private static Store open(Path file, Maker maker) {
    if (Files.isDirectory(file)) {
      throw new MistakeException(file + ": is a folder; name a database file with --db");
    }
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.setBusyTimeout(BUSY_TIMEOUT_MS);
    config.enforceForeignKeys(true);
    // What SQLite keeps to take one statement back is small here; a full /tmp must not stop us.
    config.setTempStore(TempStore.MEMORY);
    Connection connection = null;
    try {
      connection = connected(config, file);
      Schema.bringUpToDate(connection, file);
      return maker.make(file, connection);
    } catch (SQLException e) {
      closeQuietly(connection);
      throw fault(file, e);
    } catch (MistakeException e) {
      closeQuietly(connection);
      throw e;
    }
  }

  /**
   * Of two that open a new file at once one is told that it is busy without any waiting: SQLite
   * does not heed the busy timeout while it turns a file to WAL.
   */
  private static Connection connected(SQLiteConfig config, Path file) throws SQLException {
    long untilNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BUSY_TIMEOUT_MS);
    while (true) {
      try {
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
      } catch (SQLException e) {
        boolean isBusy = SqlFault.primaryCode(e) == SQLiteErrorCode.SQLITE_BUSY;
        if (!isBusy || System.nanoTime() - untilNs >= 0) {
          throw e;
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(AGAIN_MS));
      }
    }
  }

  private static RuntimeException fault(Path file, SQLException fault) {
    SQLiteErrorCode code = SqlFault.primaryCode(fault);
    return switch (code) {
      case SQLITE_NOTADB ->
          new MistakeException(
              file + ": not a Heatwake database, or damaged; name another file with --db", fault);
      case SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
          new NotWritableException(file, fault);
      default -> SqlFault.of(file, fault);
    };
  }

  static void closeQuietly(Connection connection) {
    try {
      if (connection != null) {
        connection.close();
      }
    } catch (SQLException e) {
      // The fault that led here is the one worth telling.
      return;
    }
  }
}
