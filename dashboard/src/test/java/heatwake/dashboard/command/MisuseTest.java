package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A value that cannot be is said with its option, the value and the mend, by every command. */
class MisuseTest {
  @TempDir Path folder;

  private Path database;
  private Path rig;

  @BeforeEach
  void aSite() throws IOException {
    database = CommandCase.database(folder.resolve("h.db"));
    rig = CommandCase.rig(folder.resolve("r.toml"));
  }

  private static void assertMisuse(String words, Object... arguments) {
    CommandCase answer = CommandCase.run(arguments);
    assertThat(answer.err().lines()).hasSize(1);
    assertThat(answer.err()).startsWith("heatwake: " + words);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.status()).isEqualTo(Main.MISTAKE);
  }

  @Test
  void aRunIsAWholeNumber() {
    for (String bad : List.of("99999999999999999999", "-1", "1.5", "", "abc", "1,2", "0x1")) {
      String said =
          "--run \""
              + bad
              + "\": a run has a whole number, such as 1; \"heatwake runs\" lists them;";
      assertMisuse(said, "analyse", "--db", database, "--run=" + bad);
      assertMisuse(said, "export", "--db", database, "--run=" + bad);
      assertMisuse(said, "report", "--db", database, "--run=" + bad, "-o", folder.resolve("o"));
      assertMisuse(said, "compare", "--db", database, "--run", 1, "--run=" + bad);
      assertMisuse(said, "note", "--db", database, "--run=" + bad, "moved");
    }
    assertMisuse(
        database + ": has no run 0; its runs are 1", "analyse", "--db", database, "--run=0");
  }

  @Test
  void anUnknownOptionIsNamedWithoutWhatFollowsIt() {
    String mend = "there is no option --database; see heatwake runs --help";
    assertMisuse(mend, "runs", "--database", database);
    assertMisuse(mend, "runs", "--database=" + database);
  }

  @Test
  void aRunIsNotComparedWithItself() {
    assertMisuse(
        "run 1 is named twice; name two runs", "compare", "--db", database, "--run=1", "--run=1");
  }

  @Test
  void anEmptyDatabaseIsSaidToBeSo() {
    Path empty = folder.resolve("empty.db");
    Store.open(empty).close();
    CommandCase answer = CommandCase.run("runs", "--db", empty);
    assertThat(answer.status()).isEqualTo(Main.DONE);
    assertThat(answer.out().lines()).hasSize(1);
    assertThat(answer.err()).startsWith("no run yet; record one");
    assertThat(CommandCase.run("runs", "--db", database).err()).isEmpty();
  }

  @Test
  void anEmptyFileNameIsNotTheFolderWeAreIn() {
    String empty = " \"\": is empty; name a file or folder; see heatwake ";
    for (List<String> command :
        List.of(
            List.of("runs"),
            List.of("analyse"),
            List.of("window"),
            List.of("note", "moved"),
            List.of("export", "--run=1"),
            List.of("report", "-o=x.pdf"),
            List.of("compare", "--run=1", "--run=1"),
            List.of("import", "--rig=r.toml", "d.csv"),
            List.of("record", "r.toml"))) {
      List<Object> words = new ArrayList<>(command);
      words.add("--db=");
      assertMisuse("--db" + empty + command.get(0), words.toArray());
    }
    assertMisuse("-o" + empty, "report", "--db", database, "-o", "");
    assertMisuse("-o" + empty, "export", "--db", database, "--run", 1, "-o", "");
    assertMisuse("--rig-out" + empty, "export", "--db", database, "--run", 1, "--rig-out", "");
    assertMisuse("--rig" + empty, "import", "--db", database, "--rig", "", "d.csv");
    assertMisuse("DATA.csv" + empty, "import", "--db", database, "--rig", rig, "");
    assertMisuse("RIG.toml" + empty, "record", "--db", database, "");
    assertMisuse("a word is empty; fill it in", "record", "--db", database, rig, "");
    assertMisuse("--status" + empty, "record", rig, "--db", database, "--status", "");
    assertMisuse(
        "--broker-users" + empty, "record", rig, "--db", database, "--broker", "--broker-users=");
    assertMisuse("--out" + empty, "demo", "--no-window", "--out", "");
  }

  @Test
  void anEmptyWordIsNotTaken() {
    String empty = " \"\": is empty; fill it in or leave it out; see heatwake ";
    assertMisuse("--status-topic" + empty, "record", rig, "--db", database, "--status-topic", "");
    assertMisuse("--on-flag" + empty, "record", rig, "--db", database, "--on-flag", "");
    assertMisuse(
        "--broker-listen" + empty, "record", rig, "--db", database, "--broker", "--broker-listen=");
    assertMisuse("--scenario" + empty, "demo", "--scenario", "");
    assertMisuse("the PORT is empty; name one", "ports", "--listen", "");
    assertMisuse("a word is empty; fill it in", "");
    assertMisuse("--cut \"\" is not understood", "record", rig, "--db", database, "--cut", "");
  }

  @Test
  void numbersHaveLimits() {
    for (String bad : List.of("99999999999", "-1", "0", "1.5", "", "3601")) {
      assertMisuse(
          "--seconds \"" + bad + "\": write a whole number from 1 to 3600",
          "ports",
          "--seconds=" + bad);
    }
    for (String bad : List.of("99999999999", "-1", "65536", "1.5", "", "r.toml")) {
      assertMisuse(
          "--broker \"" + bad + "\": a port is a number from 1 to 65535",
          "record",
          rig,
          "--db",
          database,
          "--broker=" + bad);
    }
  }

  @Test
  void whatIsChosenIsOneOfAFew() {
    assertMisuse("--units \"\": write metric or us;", "analyse", "--db", database, "--units", "");
    assertMisuse("--units \"K\": write metric or us;", "window", "--db", database, "--units", "K");
    assertThat(CommandCase.run("analyse", "--db", database, "--units", "US").status())
        .isEqualTo(Main.DONE);
    assertMisuse(
        "--json takes no value; leave \"=maybe\" away", "runs", "--db", database, "--json=maybe");
    assertMisuse("\"bypass\" is one word too many", "runs", "--db", database, "bypass", "moved");
  }

  /** Without a locale Java writes file names in ASCII (JDK 17, sun.jnu.encoding). */
  @Test
  void aNameThatTheLocaleCannotWriteIsSaid() throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
            "bash",
            "-c",
            "exec \"$JAVA\" -cp \"$CP\" "
                + Main.class.getName()
                + " runs --db $'h\\xc3\\xbctte.db'");
    builder.environment().put("LC_ALL", "C");
    builder.environment().put("CP", System.getProperty("java.class.path"));
    builder
        .environment()
        .put("JAVA", Path.of(System.getProperty("java.home"), "bin", "java").toString());
    Process process = builder.start();
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isEqualTo(Main.MISTAKE);
    assertThat(said.lines()).hasSize(1);
    assertThat(said).startsWith("heatwake: --db ").contains("LC_ALL=C.UTF-8");
  }
}
