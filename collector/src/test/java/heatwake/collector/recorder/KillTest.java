package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
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
    long acknowledged = 0;
    for (int kill = 1; kill <= KILLS; kill++) {
      Path said = folder.resolve("said-" + kill);
      Process process =
          RecorderProcess.start(List.of(), database, MORE_THAN_IT_LIVES_TO_SEND, said);
      RecorderProcess.awaitFirstWord(process, said);
      Thread.sleep(random.nextInt(LONGEST_LIFE_MS));
      process.destroyForcibly().waitFor();

      List<String> lines = RecorderProcess.linesOf(Files.readString(said));
      long run = Long.parseLong(lines.get(0).substring("run ".length()));
      assertThat(integrityOf(database)).isEqualTo("ok");
      checkRun(database, run, lines.subList(1, lines.size()));
      acknowledged += lines.size() - 1;
    }
    assertThat(acknowledged).isPositive();
    System.out.println(KILLS + " kills, " + acknowledged + " acknowledged readings, none lost");

    Recorder.open(database, RecorderSettings.USUAL).close();
    try (Store store = Store.openExisting(database)) {
      assertThat(store.runsWithoutEnd()).isEmpty();
      assertThat(store.runs()).hasSize(KILLS);
    }
  }

  private static void checkRun(Path database, long run, List<String> acknowledged) {
    try (Store store = Store.openExisting(database)) {
      Recording recording = store.load(run);
      if (acknowledged.isEmpty()) {
        return;
      }
      Series power = recording.of(Channel.POWER).orElseThrow();
      // Sent in order, so all up to the last acknowledged must be there, once, with its value.
      for (int i = 0; i < power.size(); i++) {
        assertThat(power.timeMs(i)).isEqualTo(AcknowledgingRecorder.START + i);
        assertThat(power.value(i)).isEqualTo(AcknowledgingRecorder.valueOf(i));
      }
      assertThat(power.size())
          .isGreaterThan(Integer.parseInt(acknowledged.get(acknowledged.size() - 1)));
      assertThat(recording.events()).noneMatch(event -> event.kind() == EventKind.DUPLICATE);
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
