package heatwake.collector.store;

import heatwake.collector.mistake.MistakeException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns the database library's complaints into ours. */
final class SqlFault {
  private SqlFault() {}

  static RuntimeException of(Path file, SQLException fault) {
    return switch (primaryCode(fault)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          new StoreBlockedException(
              file + ": locked by another program", "close that program, or try again", fault);
      case SQLITE_FULL ->
          new StoreBlockedException(
              file + ": the disk is full", "free some space, then try again", fault);
      case SQLITE_READONLY ->
          new StoreBlockedException(
              file + ": cannot be written", "check its permissions, then try again", fault);
      case SQLITE_IOERR, SQLITE_CANTOPEN, SQLITE_PROTOCOL, SQLITE_NOMEM ->
          new StoreBlockedException(
              file + ": cannot be written (" + fault.getMessage() + ")",
              "check disk and permissions, then try again",
              fault);
      case SQLITE_CORRUPT, SQLITE_NOTADB -> damaged(file, fault);
      default -> new StoreException(file + ": " + fault.getMessage(), fault);
    };
  }

  /** Said with the mend that SQLite has for it (its command line shell, ".recover"). */
  static MistakeException damaged(Path file, SQLException fault) {
    return new MistakeException(
        file
            + ": the database is damaged; copy it away, then save what can be read with SQLite's shell (get"
            + " it from sqlite.org: packaged ones may lack .recover): \"sqlite3 "
            + file
            + " .recover | sqlite3 saved.db\" and use --db saved.db",
        fault);
  }

  /** The primary result code behind an extended one. */
  static SQLiteErrorCode primaryCode(SQLException fault) {
    if (fault instanceof SQLiteException known) {
      return SQLiteErrorCode.getErrorCode(known.getResultCode().code & 0xFF);
    }
    return SQLiteErrorCode.UNKNOWN_ERROR;
  }
}
