package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A real recorder process killed (SIGKILL) at random moments, again and again on one database. For
 * hundreds: {@code mvn -pl collector -am test -Dtest=KillTest -Dheatwake.kills=500}.
 */
class KillTest {
  private static final int KILLS = Integer.getInteger("heatwake.kills", 15);
  private static final int LONGEST_LIFE_MS = 600;
  private static final int MORE_THAN_IT_LIVES_TO_SEND = 100_000_000;

  @TempDir private Path folder;

  @Test
  @Timeout(3600)
  void whatWasAcknowledgedIsThereExactlyOnceAndTheNextRecorderGoesOn() throws Exception {
    Path database = folder.resolve("heatwake.db");
    Random random = new Random();
    int next = 0;
    for (int kill = 1; kill <= KILLS; kill++) {
      Path said = folder.resolve("said-" + kill);
      Process process =
          RecorderProcess.start(List.of(), database, next, MORE_THAN_IT_LIVES_TO_SEND, said);
      RecorderProcess.awaitFirstWord(process, said);
      Thread.sleep(random.nextInt(LONGEST_LIFE_MS));
      process.destroyForcibly().waitFor();

      List<String> lines = RecorderProcess.linesOf(Files.readString(said));
      assertThat(lines.get(0)).isEqualTo("run " + kill);
      if (lines.size() > 1) {
        next = Integer.parseInt(lines.get(lines.size() - 1)) + 1;
      }
      assertThat(integrityOf(database)).isEqualTo("ok");
      checkAllRuns(database, next);
    }
    assertThat(next).isPositive();
    System.out.println(KILLS + " kills, " + next + " acknowledged readings, none lost or doubled");

    Recorder.open(database, RecorderSettings.USUAL).close();
    try (Store store = Store.openExisting(database)) {
      assertThat(store.runsWithoutEnd()).isEmpty();
      assertThat(store.runs()).hasSize(KILLS);
    }
  }

  /** Sent in order, so all up to the last acknowledged is there once, in whichever run. */
  private static void checkAllRuns(Path database, int acknowledged) {
    List<Long> numbers = new ArrayList<>();
    try (Store store = Store.openExisting(database)) {
      for (RunSummary run : store.runs()) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> {
              long number = timeMs - AcknowledgingRecorder.START;
              assertThat(value).isEqualTo(AcknowledgingRecorder.valueOf(number));
              numbers.add(number);
            });
      }
    }
    assertThat(numbers).hasSizeGreaterThanOrEqualTo(acknowledged);
    for (int i = 0; i < numbers.size(); i++) {
      assertThat(numbers.get(i)).isEqualTo(i);
    }
  }

  private static String integrityOf(Path database) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
      return row.next() ? row.getString(1) : "no answer";
    }
  }
}
