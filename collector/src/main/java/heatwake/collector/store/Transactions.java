package heatwake.collector.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Does work on a database in transactions, and tells faults as what they mean to a person. Work
 * within work is part of the same transaction. Used by one thread at a time.
 */
final class Transactions implements AutoCloseable {
  private final Path file;
  private final Statement transaction;
  private final SqlStep beforeRollback;
  private boolean under;

  /** Work on the database. */
  interface SqlWork<T> {
    T run() throws SQLException;
  }

  /** Something to do besides. */
  interface SqlStep {
    void run() throws SQLException;
  }

  /**
   * Transactions on a connection to a file.
   *
   * @param beforeRollback forgets what was looked up, which may be gone then
   */
  Transactions(Path file, Connection connection, SqlStep beforeRollback) throws SQLException {
    this.file = file;
    this.transaction = connection.createStatement();
    this.beforeRollback = beforeRollback;
  }

  /** Reads several things as they were at one moment, whatever is written meanwhile. */
  <T> T inOneView(SqlWork<T> work) {
    if (under) {
      return read(work);
    }
    under = true;
    try {
      transaction.executeUpdate("BEGIN");
      return work.run();
    } catch (SQLException e) {
      throw SqlFault.of(file, e);
    } finally {
      under = false;
      endView();
    }
  }

  private void endView() {
    try {
      transaction.executeUpdate("ROLLBACK");
    } catch (SQLException e) {
      // Nothing was written; a fault that ended the view by itself is being told.
      return;
    }
  }

  /** Reads one thing. */
  <T> T read(SqlWork<T> work) {
    try {
      return work.run();
    } catch (SQLException e) {
      throw SqlFault.of(file, e);
    }
  }

  /** Writes in one commit, that of the work around it if there is one: all of it, or nothing. */
  <T> T write(SqlWork<T> work) {
    if (under) {
      return read(work);
    }
    under = true;
    boolean done = false;
    try {
      transaction.executeUpdate("BEGIN IMMEDIATE");
      T result = work.run();
      transaction.executeUpdate("COMMIT");
      done = true;
      return result;
    } catch (SQLException e) {
      throw SqlFault.of(file, e);
    } finally {
      under = false;
      if (!done) {
        rollback();
      }
    }
  }

  /** Writes something that has no result, in one commit as {@link #write} does. */
  void change(SqlStep work) {
    boolean unused =
        write(
            () -> {
              work.run();
              return true;
            });
  }

  private void rollback() {
    try {
      beforeRollback.run();
      transaction.executeUpdate("ROLLBACK");
    } catch (SQLException e) {
      // A full disk or an I/O fault has rolled back already; the fault that led here is being told.
      return;
    }
  }

  @Override
  public void close() throws SQLException {
    transaction.close();
  }
}
