package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.store.Store;
import heatwake.collector.unattended.StatusFile;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.example.InventedStore;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong is said in one line of plain words, with the mend and the right status. */
class FaultsTest {
  @TempDir Path folder;

  private static final String RIG =
      """
      [[source]]
      name = "wifi"
      mqtt = "mqtt://127.0.0.1:1883"
      user = "logger"
      password-env = "HEATWAKE_TEST_NEVER_SET"
      [[probe]]
      channel = "water-in"
      source = "wifi"
      topic = "a"
      unit = "Cel"
      """;

  private static void assertPlain(CommandCase answer, int status, String... words) {
    assertThat(answer.err().lines()).hasSize(1);
    assertThat(answer.err()).startsWith("heatwake: ").contains(words);
    assertThat(answer.err()).doesNotContain("Exception").doesNotContain("SQLITE");
    assertThat(answer.status()).isEqualTo(status);
  }

  @Test
  void aDamagedDatabaseIsSaidWithTheMend() throws Exception {
    Path database = CommandCase.database(folder.resolve("c.db"));
    byte[] noise = new byte[6 * 4096];
    new Random(5).nextBytes(noise);
    try (RandomAccessFile file = new RandomAccessFile(database.toFile(), "rw")) {
      file.seek(2 * 4096);
      file.write(noise);
    }
    Path rig = Files.writeString(folder.resolve("r.toml"), RIG.replaceAll("(?m)^(us|pass).*$", ""));
    Path out = folder.resolve("out");
    String mend = ".recover | sqlite3 saved.db";
    assertPlain(CommandCase.run("runs", "--db", database), Main.MISTAKE, "damaged", mend);
    assertPlain(CommandCase.run("analyse", "--db", database), Main.MISTAKE, "damaged", mend);
    assertPlain(
        CommandCase.run("export", "--db", database, "--run", 1, "-o", out), Main.MISTAKE, mend);
    assertPlain(
        CommandCase.run("report", "--db", database, "--run", 1, "-o", out), Main.MISTAKE, mend);
    assertPlain(CommandCase.run("record", rig, "--db", database), Main.MISTAKE, "damaged", mend);
    assertThat(out).doesNotExist();
  }

  @Test
  void aLockedDatabaseIsSaidWithoutAClassName() throws Exception {
    Path database = CommandCase.database(folder.resolve("l.db"));
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN EXCLUSIVE");
      assertPlain(
          CommandCase.run("note", "--db", database, "--run", 1, "bypass moved"),
          Main.FAULT,
          "locked by another program; close that program, or try again");
    }
  }

  @Test
  void aCellWithoutEndIsSaidInPlainWords() throws IOException {
    Path csv =
        Files.writeString(
            folder.resolve("d.csv"),
            "time,water-in [Cel]\n2031-05-04T18:00:00Z,\"" + "7".repeat(17 << 20) + "\n");
    Path rig =
        Files.writeString(
            folder.resolve("r.toml"), "[[probe]]\nchannel = \"water-in\"\nunit = \"Cel\"\n");
    assertPlain(
        CommandCase.run("import", "--db", folder.resolve("n.db"), "--rig", rig, csv),
        Main.MISTAKE,
        "d.csv:2: broken row: a cell is far too long; is a quote not closed?");
  }

  @Test
  void noDatabaseIsMadeForACsvThatIsNone() throws IOException {
    Path rig = CommandCase.rig(folder.resolve("r.toml"));
    Path made = folder.resolve("n.db");
    Path csv = folder.resolve("d.csv");
    assertPlain(
        CommandCase.run("import", "--db", made, "--rig", rig, csv),
        Main.MISTAKE,
        "d.csv: no such file; check the path of the CSV");
    Files.writeString(csv, "when,water-in [Cel]\n");
    assertThat(CommandCase.run("import", "--db", made, "--rig", rig, csv).status())
        .isEqualTo(Main.MISTAKE);
    assertThat(made).doesNotExist();
  }

  @Test
  void aUnitIsPrintedWithoutThePassword() throws IOException {
    Path rig = Files.writeString(folder.resolve("r.toml"), RIG);
    Path database = folder.resolve("n.db");
    CommandCase unit = CommandCase.run("record", rig, "--db", database, "--print-unit");
    assertThat(unit.err()).isEmpty();
    assertThat(unit.status()).isEqualTo(Main.DONE);
    assertThat(unit.out()).contains("EnvironmentFile=").contains("ExecStart=");
    assertPlain(
        CommandCase.run("record", rig, "--db", database),
        Main.MISTAKE,
        rig + ":5: ",
        "HEATWAKE_TEST_NEVER_SET is not set");
  }

  @Test
  void anAuthorityThatWillNotDoIsSaidWithItsLine() throws IOException {
    Path pem = Files.writeString(folder.resolve("ca.pem"), "no certificate");
    String tls = RIG.replaceAll("(?m)^pass.*$", "ca = \"%s\"").replace("mqtt://", "mqtts://");
    Path rig = folder.resolve("t.toml");
    Files.writeString(rig, tls.formatted(pem));
    Path database = folder.resolve("t.db");
    assertPlain(
        CommandCase.run("record", rig, "--db", database),
        Main.MISTAKE,
        rig + ":5: ca = \"" + pem + "\": no certificate in it; name a PEM file");
    Files.writeString(rig, tls.formatted(folder.resolve("absent.pem")));
    assertPlain(
        CommandCase.run("record", rig, "--db", database),
        Main.MISTAKE,
        rig + ":5: ",
        "cannot be read; name a PEM file");
  }

  @Test
  void aBrokerThatMayNotListenIsSaidBeforeAnythingIsMade() throws IOException {
    Path rig = Files.writeString(folder.resolve("r.toml"), RIG.replaceAll("(?m)^pass.*$", ""));
    Path database = folder.resolve("b.db");
    assertPlain(
        CommandCase.run("record", rig, "--db", database, "--broker", "--broker-listen", "0.0.0.0"),
        Main.MISTAKE,
        "needs --broker-users FILE");
    assertThat(database).doesNotExist();
  }

  @Test
  void theDemoWritesOverNothingOfOurs() throws IOException {
    Path rig = Files.writeString(folder.resolve("rig.toml"), RIG);
    assertPlain(
        CommandCase.run("demo", "--no-window", "--out", folder),
        Main.MISTAKE,
        rig + " is not the demo's, which would write over it; name another folder with --out");
    assertThat(rig).hasContent(RIG);
    Files.delete(rig);
    Path database = CommandCase.database(folder.resolve("heatwake.db"));
    assertPlain(
        CommandCase.run("demo", "--no-window", "--out", folder),
        Main.MISTAKE,
        database
            + " holds run 1 of Heron Lane, which is not the demo's; name another folder with --out");
    // Nor with the demo's own rig beside it: somebody recorded into the demo's database.
    Files.writeString(rig, "# The invented site of the demo, scenario low-flow.\n");
    assertPlain(
        CommandCase.run("demo", "--no-window", "--out", folder),
        Main.MISTAKE,
        database + " holds run 1 of Heron Lane");
  }

  @Test
  void aStatusFileEndsAsTheTopicDoes() throws IOException {
    Path file = folder.resolve("status.json");
    try (StatusFile status = new StatusFile(file)) {
      status.put("{\"state\":\"recording\"}");
    }
    assertThat(file).content().isEqualToIgnoringNewLines("{\"state\":\"stopped\"}");
  }

  @Test
  void wordsNameNoClass() {
    IOException denied = new AccessDeniedException("/srv/x");
    assertThat(FaultWords.of(new UncheckedIOException(denied)))
        .isEqualTo("/srv/x: not allowed; check its permissions");
    assertThat(FaultWords.of(new UncheckedIOException("x: cannot be opened", denied)))
        .isEqualTo("x: cannot be opened (/srv/x: not allowed; check its permissions)");
    assertThat(FaultWords.of(new ExecutionException(new IOException("no\nspace"))))
        .isEqualTo("no space");
  }

  @Test
  void aReaderThatLeavesEarlyIsNoFault() throws Exception {
    Path database = folder.resolve("i.db");
    try (Store store = Store.open(database)) {
      // More than a pipe holds.
      store.endRun(InventedStore.begin(store, 120), InventedNight.minute(120));
    }
    String export =
        String.join(
            " ",
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                "\"$CP\"",
                Main.class.getName(),
                "export --run 1 --db",
                database.toString()));
    assertThat(shell(export + " | head -n 1; exit ${PIPESTATUS[0]}")).isEmpty();
    assertThat(shell(export + " > /dev/full; test $? = 1"))
        .isEqualToIgnoringNewLines(
            "heatwake: standard output: cannot be written (No space left on device); free some"
                + " space or name another place");
  }

  private static String shell(String line) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("bash", "-c", line);
    builder.environment().put("CP", System.getProperty("java.class.path"));
    Process process = builder.redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return said;
  }

  @Test
  void aDamagedDatabaseIsNotOpened() throws IOException {
    Path text = Files.writeString(folder.resolve("t.db"), "no database ".repeat(400));
    assertThatThrownBy(() -> Store.openExisting(text)).hasMessageContaining("not a Heatwake");
  }

  @Test
  void aNoteSaysWhereItWentAndAsksWhereSeveralRecord() {
    Path database = folder.resolve("n.db");
    try (Store store = Store.open(database)) {
      InventedStore.begin(store, 5);
      assertThat(CommandCase.run("note", "--db", database, "bypass moved").err())
          .isEqualToIgnoringNewLines("noted in run 1");
      InventedStore.begin(store, 5);
      assertPlain(
          CommandCase.run("note", "--db", database, "bypass moved"),
          Main.MISTAKE,
          "the runs 1, 2 are being recorded; name one with --run");
      assertThat(CommandCase.run("note", "--db", database, "--run", 2, "moved").status())
          .isEqualTo(Main.DONE);
    }
  }

  @Test
  void aPortThatIsNotThereGivesNoSkeleton() {
    CommandCase answer = CommandCase.run("ports", "--listen", folder.resolve("tty"));
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("heatwake: ");
    assertThat(answer.status()).isEqualTo(Main.FAULT);
  }

  @Test
  void aCutSaysWhatIsAllowed() throws IOException {
    Path rig = Files.writeString(folder.resolve("r.toml"), RIG.replaceAll("(?m)^(us|pass).*$", ""));
    assertPlain(
        CommandCase.run("record", rig, "--db", folder.resolve("n.db"), "--cut", "300kB"),
        Main.MISTAKE,
        "daily, or a size in whole MB or GB, such as --cut 100MB");
  }
}
