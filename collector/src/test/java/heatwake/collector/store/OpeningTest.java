package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.peer.Eventually;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that somebody else is at work on while it is opened. Real SQLite files and locks. */
class OpeningTest {
  private static final long PATIENCE_S = 60;

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("heatwake.db");
  }

  /** Holds a new file as another program does that makes its tables. */
  private Connection heldByAnother() throws SQLException {
    Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
    try (Statement statement = other.createStatement()) {
      statement.executeUpdate("BEGIN IMMEDIATE");
    }
    return other;
  }

  @Test
  void waitsForAnotherThatIsMakingTheFile() throws Exception {
    Connection other = heldByAnother();
    CompletableFuture<Integer> opened =
        CompletableFuture.supplyAsync(
            () -> {
              try (Store store = Store.open(file())) {
                return store.runs().size();
              }
            });
    // It is at the file now, and must not have given up by the time the other lets go.
    assertThatThrownBy(() -> opened.get(300, TimeUnit.MILLISECONDS))
        .isInstanceOf(TimeoutException.class);
    other.close();
    assertThat(opened.get(PATIENCE_S, TimeUnit.SECONDS)).isZero();
  }

  @Test
  void twoThatMakeItAtOnceBothHaveIt() throws Exception {
    for (int round = 0; round < 40; round++) {
      Path file = folder.resolve("round-" + round + ".db");
      CompletableFuture<Integer> recorder =
          CompletableFuture.supplyAsync(
              () -> {
                try (Store store = Store.open(file)) {
                  return store.runs().size();
                }
              });
      Eventually.that("a file is there", () -> Files.exists(file));
      try (Store reader = Store.openExisting(file)) {
        assertThat(reader.runs()).isEmpty();
      }
      assertThat(recorder.get(PATIENCE_S, TimeUnit.SECONDS)).isZero();
    }
  }
}
