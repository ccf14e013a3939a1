package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A database that may be read but not written, by the commands as a user who is not root. */
class ReadOnlyDatabaseTest {
  @TempDir Path folder;

  private static void permit(Path path, String permissions) throws Exception {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
  }

  private record Answer(int status, String text) {}

  /** Runs a command in a process of its own, as nobody where the tests run as root. */
  private static Answer run(String... words) throws Exception {
    List<String> command = new ArrayList<>();
    if ("root".equals(System.getProperty("user.name"))) {
      Assumptions.assumeTrue(
          Files.isExecutable(Path.of("/usr/bin/setpriv")), "setpriv is not installed");
      command.addAll(
          List.of("/usr/bin/setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"));
    }
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName()));
    command.addAll(List.of(words));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    int status = process.waitFor();
    Assumptions.assumeFalse(
        text.contains("ClassNotFoundException") || text.contains("NoClassDefFoundError"),
        "another user cannot read the built classes");
    return new Answer(status, text);
  }

  @Test
  void isReadAndNotWritten() throws Exception {
    Path database = CommandCase.database(folder.resolve("night 1#.db"));
    Path rig =
        Files.writeString(
            folder.resolve("r.toml"),
            """
            [[source]]
            name = "clips"
            serial = "/dev/absent"
            [[probe]]
            channel = "water-in"
            source = "clips"
            field = "t1"
            unit = "Cel"
            """);
    permit(database, "r--r--r--");
    permit(folder, "r-xr-xr-x");
    try {
      String before = CommandCase.run("analyse", "--db", database, "--json").out().strip();
      Answer analysed = run("analyse", "--db", database.toString(), "--json");
      assertThat(analysed).isEqualTo(new Answer(Main.DONE, before));
      assertThat(run("runs", "--db", database.toString()).status()).isEqualTo(Main.DONE);
      Answer recorded = run("record", rig.toString(), "--db", database.toString());
      assertThat(recorded.status()).isEqualTo(Main.MISTAKE);
      assertThat(recorded.text())
          .isEqualTo(
              "heatwake: "
                  + database
                  + ": cannot be written; check its permissions or name another with --db");
      Answer noted = run("note", "--db", database.toString(), "--run", "1", "bypass moved");
      assertThat(noted.text()).startsWith("heatwake: " + database + ": cannot be written");
      assertThat(noted.text()).doesNotContain("SQLITE");
    } finally {
      permit(folder, "rwx------");
    }
  }

  @Test
  void aLogThatCannotBeReadIsNotPassedOver() throws Exception {
    Path database = CommandCase.database(folder.resolve("copied.db"));
    Files.write(folder.resolve("copied.db-wal"), new byte[64]);
    permit(folder.resolve("copied.db-wal"), "---------");
    permit(folder, "r-xr-xr-x");
    try {
      Answer answer = run("runs", "--db", database.toString());
      assertThat(answer.status()).isEqualTo(Main.MISTAKE);
      assertThat(answer.text()).contains("its latest readings lie in copied.db-wal");
    } finally {
      permit(folder, "rwx------");
    }
  }
}
