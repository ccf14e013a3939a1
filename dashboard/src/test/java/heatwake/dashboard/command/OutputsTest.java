package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No output option costs a file that is read, a database, or the output before. */
class OutputsTest {
  @TempDir Path folder;

  private Path database;
  private byte[] before;

  @BeforeEach
  void aDatabase() throws IOException {
    database = CommandCase.database(folder.resolve("i.db"));
    before = Files.readAllBytes(database);
  }

  private void assertRefused(String why, Object... words) throws IOException {
    CommandCase answer = CommandCase.run(words);
    assertThat(answer.err().lines()).hasSize(1);
    assertThat(answer.err()).startsWith("heatwake: ").contains(why).contains("name a");
    assertThat(answer.status()).isEqualTo(Main.MISTAKE);
    assertThat(Files.readAllBytes(database)).isEqualTo(before);
  }

  private List<Path> aliases() throws IOException {
    Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("i.db"));
    Path hard = Files.createLink(folder.resolve("hard"), database);
    Path around = folder.resolve("..").resolve(folder.getFileName()).resolve("i.db");
    Path relative = Path.of("").toAbsolutePath().relativize(database);
    return List.of(database, link, hard, around, relative);
  }

  @Test
  void theDatabaseIsNoOutputByWhateverName() throws IOException {
    for (Path name : aliases()) {
      assertRefused(" database", "report", "--db", database, "--run", 1, "-o", name);
      assertRefused(" database", "export", "--db", database, "--run", 1, "-o", name);
      assertRefused(" database", "export", "--db", database, "--run", 1, "--rig-out", name);
    }
    for (String beside : List.of("-wal", "-shm", "-recording")) {
      Path name = folder.resolve("i.db" + beside);
      assertRefused("part of the database", "export", "--db", database, "--run", 1, "-o", name);
    }
  }

  @Test
  void anotherDatabaseIsNoOutputEither() throws IOException {
    Path other = Files.copy(database, folder.resolve("other.db"));
    assertRefused("SQLite", "export", "--db", database, "--run", 1, "-o", other);
    assertRefused("SQLite", "report", "--db", database, "--run", 1, "-o", other);
    assertThat(Files.readAllBytes(other)).isEqualTo(before);
  }

  @Test
  void twoOutputsAreTwoFiles() {
    Path out = folder.resolve("z");
    CommandCase answer =
        CommandCase.run(
            "export", "--db", database, "--run", 1, "-o", out, "--rig-out", folder + "/./z");
    assertThat(answer.err())
        .isEqualToIgnoringNewLines(
            "heatwake: -o and --rig-out both name " + out + "; name two files");
    assertThat(answer.status()).isEqualTo(Main.MISTAKE);
    assertThat(out).doesNotExist();
  }

  @Test
  void statusDoesNotReplaceRigOrDatabase() throws IOException {
    Path rig = CommandCase.rig(folder.resolve("rig.toml"));
    assertRefused("record reads", "record", rig, "--db", folder.resolve("n.db"), "--status", rig);
    assertRefused(" database", "record", rig, "--db", database, "--status", database);
    assertThat(rig).content().startsWith("[[source]]");
  }

  @Test
  void anEmptyCsvIsNotMadeADatabase() throws IOException {
    Path csv = Files.createFile(folder.resolve("d.csv"));
    Path rig = folder.resolve("r.toml");
    CommandCase.run("export", "--db", database, "--run", 1, "--rig-out", rig, "-o", folder + "/o");
    assertRefused("is the CSV", "import", "--db", csv, "--rig", rig, csv);
    assertThat(csv).isEmptyFile();
  }

  @Test
  void aFailedExportLeavesTheFileBeforeAndNothingElse() throws IOException {
    Path out = Files.writeString(folder.resolve("o.csv"), "kept");
    CommandCase answer = CommandCase.run("export", "--db", database, "--run", 7, "-o", out);
    assertThat(answer.status()).isEqualTo(Main.MISTAKE);
    assertThat(out).content().isEqualTo("kept");
    assertNoDraft();
  }

  @Test
  void anExportReplacesTheFileAndWhatALinkLeadsTo() throws IOException {
    Path out = Files.writeString(folder.resolve("o.csv"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("l.csv"), out);
    assertThat(CommandCase.run("export", "--db", database, "--run", 1, "-o", link).status())
        .isEqualTo(Main.DONE);
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(out, StandardCharsets.UTF_8)).startsWith("time,");
    assertNoDraft();
  }

  @Test
  void aFolderOrAFullDeviceIsSaidInPlainWords() throws IOException {
    assertRefused("is a folder", "export", "--db", database, "--run", 1, "-o", folder);
    CommandCase full = CommandCase.run("export", "--db", database, "--run", 1, "-o", "/dev/full");
    assertThat(full.status()).isEqualTo(Main.FAULT);
    assertThat(full.err())
        .isEqualToIgnoringNewLines(
            "heatwake: /dev/full: cannot be written (No space left on device); name another file"
                + " with -o");
  }

  private void assertNoDraft() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.filter(file -> file.toString().endsWith(".part"))).isEmpty();
    }
  }
}
