package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Power cuts, simulated: a real recorder runs under strace, which notes every write and sync of its
 * files. Then the disk is rebuilt as it may have been at some moment: all that was synced before,
 * of what was written since a random part in whole sectors. At each such moment the database must
 * be sound and hold every reading that had been acknowledged. (It fails with synchronous=NORMAL.)
 */
class PowerCutTest {
  private static final int CUTS = Integer.getInteger("heatwake.powercuts", 150);
  private static final int READINGS = 2500;

  @TempDir private Path folder;

  @Test
  @Timeout(600)
  void whatWasAcknowledgedIsOnTheDiskAtAnyMoment() throws Exception {
    Path database = folder.resolve("heatwake.db");
    Path trace = folder.resolve("trace");
    Path said = folder.resolve("said");
    Process process;
    try {
      process =
          RecorderProcess.start(
              List.of(
                  "strace",
                  "-f",
                  "-y",
                  "-xx",
                  "-s",
                  "200000",
                  "-o",
                  trace.toString(),
                  "-e",
                  "trace=write,pwrite64,fsync,fdatasync,ftruncate,unlink"),
              database,
              READINGS,
              said);
    } catch (IOException e) {
      abort("not run: needs strace (" + e.getMessage() + ")");
      return;
    }
    assertThat(process.waitFor()).as(Files.readString(Path.of(said + ".err"))).isZero();

    List<TracedCall> calls;
    try (Stream<String> lines = Files.lines(trace, StandardCharsets.ISO_8859_1)) {
      calls = TracedCall.read(lines, folder);
    }
    assertThat(calls).anyMatch(TracedCall::isSync);
    Random random = new Random(17);
    int acknowledgedInAll = 0;
    for (int cut = 0; cut < CUTS; cut++) {
      int moment = random.nextInt(calls.size());
      Path disk = Files.createDirectories(folder.resolve("cut-" + cut));
      CrashedDisk crashed = new CrashedDisk();
      calls.subList(0, moment).forEach(crashed::replay);
      crashed.writeTo(disk, random);
      int acknowledged = (int) crashed.linesSaid("said").stream().skip(1).count();
      acknowledgedInAll += acknowledged;
      check(disk.resolve("heatwake.db"), acknowledged);
    }
    assertThat(acknowledgedInAll).isPositive();
    System.out.println(
        CUTS + " power cuts, " + acknowledgedInAll + " acknowledged readings, none lost");
  }

  private static void check(Path database, int acknowledged) throws SQLException, IOException {
    if (!Files.exists(database)) {
      assertThat(acknowledged).isZero();
      return;
    }
    assertThat(integrityOf(database)).isEqualTo("ok");
    if (acknowledged == 0) {
      return;
    }
    try (Store store = Store.openExisting(database)) {
      long run = store.runs().get(0).id();
      assertThat(store.load(run).of(Channel.POWER).orElseThrow().size())
          .isGreaterThanOrEqualTo(acknowledged);
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
