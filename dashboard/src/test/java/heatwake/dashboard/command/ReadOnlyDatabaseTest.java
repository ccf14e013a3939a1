package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.Store;
import heatwake.dashboard.example.InventedStore;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A database that may be read but not written, by the commands as a user who is not root. */
class ReadOnlyDatabaseTest {
  private static final boolean AS_ROOT = "root".equals(System.getProperty("user.name"));
  private static final Path SETPRIV = Path.of("/usr/bin/setpriv");
  private static final String RIG =
      """
      [[source]]
      name = "clips"
      serial = "/dev/absent"
      [[probe]]
      channel = "water-in"
      source = "clips"
      field = "t1"
      unit = "Cel"
      """;

  /** The built classes and libraries, where another user can read them. */
  @TempDir static Path program;

  private static String classPath = System.getProperty("java.class.path");

  @TempDir Path folder;

  private record Answer(int status, String text) {}

  @BeforeAll
  static void letAnotherUserReadTheProgram() throws IOException {
    if (!AS_ROOT) {
      return;
    }
    Assumptions.assumeTrue(Files.isExecutable(SETPRIV), SETPRIV + " is not installed");
    List<String> copies = new ArrayList<>();
    for (String entry : classPath.split(File.pathSeparator, -1)) {
      Path from = Path.of(entry);
      if (Files.exists(from)) {
        Path to = program.resolve(copies.size() + "-" + from.getFileName());
        copy(from, to);
        copies.add(to.toString());
      }
    }
    permit(program, "rwxr-xr-x");
    classPath = String.join(File.pathSeparator, copies);
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Path copy = from.equals(file) ? to : to.resolve(from.relativize(file).toString());
        Files.copy(file, copy);
        permit(copy, Files.isDirectory(copy) ? "rwxr-xr-x" : "rw-r--r--");
      }
    }
  }

  @BeforeEach
  void letAnotherUserIn() throws IOException {
    permit(folder, "rwxr-xr-x");
  }

  private static void permit(Path path, String permissions) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
  }

  /** Runs a command in a process of its own, as nobody where the tests run as root. */
  private static Answer run(Object... words) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    if (AS_ROOT) {
      command.addAll(
          List.of(SETPRIV.toString(), "--reuid=65534", "--regid=65534", "--clear-groups"));
    }
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            classPath,
            Main.class.getName()));
    for (Object word : words) {
      command.add(word.toString());
    }
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    return new Answer(process.waitFor(), text);
  }

  private static Answer notWritable(Path database) {
    return new Answer(
        Main.MISTAKE,
        "heatwake: "
            + database
            + ": cannot be written; check its permissions or name another with --db");
  }

  private void assertReadAndNotWritten(Path database) throws Exception {
    Path rig = folder.resolve("r.toml");
    String before = CommandCase.run("analyse", "--db", database, "--json").out().strip();
    assertThat(run("analyse", "--db", database, "--json")).isEqualTo(new Answer(Main.DONE, before));
    assertThat(run("runs", "--db", database).status()).isEqualTo(Main.DONE);
    assertThat(run("record", rig, "--db", database)).isEqualTo(notWritable(database));
    assertThat(run("note", "--db", database, "--run", "1", "bypass moved"))
        .isEqualTo(notWritable(database));
  }

  @Test
  void inAFolderThatMayNotBeWrittenItIsReadAndNotWritten() throws Exception {
    Path database = CommandCase.database(folder.resolve("night 1#.db"));
    Files.writeString(folder.resolve("r.toml"), RIG);
    permit(database, "r--r--r--");
    permit(folder, "r-xr-xr-x");
    try {
      assertReadAndNotWritten(database);
    } finally {
      permit(folder, "rwx------");
    }
  }

  @Test
  void inAFolderThatMayBeWrittenItIsReadAndNotWritten() throws Exception {
    Path database = CommandCase.database(folder.resolve("night.db"));
    Files.writeString(folder.resolve("r.toml"), RIG);
    permit(database, "r--r--r--");
    permit(folder, "rwxrwxrwx");
    assertReadAndNotWritten(database);
  }

  @Test
  void oneThatMayNotBeReadIsSaidToBeSo() throws Exception {
    Path database = CommandCase.database(folder.resolve("hidden.db"));
    permit(database, "---------");
    assertThat(run("runs", "--db", database))
        .isEqualTo(
            new Answer(
                Main.MISTAKE,
                "heatwake: "
                    + database
                    + ": cannot be read; check its permissions or name another with --db"));
  }

  @Test
  void whatARecorderHasWrittenToItsLogIsRead() throws Exception {
    Path database = folder.resolve("live.db");
    try (Store store = Store.open(database)) {
      InventedStore.begin(store, 5);
      assertThat(folder.resolve("live.db-wal")).isNotEmptyFile();
      long readings = store.readingCount(1);
      permit(folder, "r-xr-xr-x");
      Answer answer = run("runs", "--db", database);
      assertThat(answer.status()).isEqualTo(Main.DONE);
      assertThat(answer.text()).contains(" " + readings + " ").contains("Heron Lane");
    } finally {
      permit(folder, "rwx------");
    }
  }

  @Test
  void aLogThatCannotBeReadIsNotPassedOver() throws Exception {
    Path recorded = folder.resolve("live.db");
    Path database = folder.resolve("copied.db");
    try (Store store = Store.open(recorded)) {
      InventedStore.begin(store, 5);
      Files.copy(recorded, database);
      Files.copy(folder.resolve("live.db-wal"), folder.resolve("copied.db-wal"));
    }
    permit(folder, "r-xr-xr-x");
    try {
      assertThat(run("runs", "--db", database))
          .isEqualTo(
              new Answer(
                  Main.MISTAKE,
                  "heatwake: "
                      + database
                      + ": its latest readings lie in copied.db-wal, which cannot be read in a"
                      + " folder that cannot be written; copy both files to one that can"));
    } finally {
      permit(folder, "rwx------");
    }
  }
}
