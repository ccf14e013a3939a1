package heatwake.collector.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns the database library's complaints into ours. */
final class SqlFault {
  private SqlFault() {}

  static StoreException of(Path file, SQLException fault) {
    return switch (primaryCode(fault)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          new StoreBlockedException(file + ": locked by another program", fault);
      case SQLITE_FULL -> new StoreBlockedException(file + ": the disk is full", fault);
      case SQLITE_IOERR, SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_PROTOCOL, SQLITE_NOMEM ->
          new StoreBlockedException(
              file + ": cannot be written (" + fault.getMessage() + ")", fault);
      default -> new StoreException(file + ": " + fault.getMessage(), fault);
    };
  }

  /** The primary result code behind an extended one. */
  static SQLiteErrorCode primaryCode(SQLException fault) {
    if (fault instanceof SQLiteException known) {
      return SQLiteErrorCode.getErrorCode(known.getResultCode().code & 0xFF);
    }
    return SQLiteErrorCode.UNKNOWN_ERROR;
  }
}
