package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.Store;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.example.InventedStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteJDBCLoader;

/** What commands say on standard error, run as processes of their own. */
class StandardErrorTest {
  @TempDir Path folder;

  private final List<Path> errors = new ArrayList<>();

  private Process start(String... arguments) throws IOException {
    Path error = folder.resolve("stderr-" + errors.size());
    errors.add(error);
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.io.tmpdir=" + folder,
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
    command.addAll(Arrays.asList(arguments));
    return new ProcessBuilder(command)
        .redirectOutput(folder.resolve("stdout-" + errors.size()).toFile())
        .redirectError(error.toFile())
        .start();
  }

  /**
   * The SQLite driver deletes native libraries that processes before it left behind, and complains
   * where another was first. The folder in the place of one makes each of them complain.
   */
  @Test
  void commandsAtTheSameTimeKeepItEmpty() throws Exception {
    Path database = folder.resolve("h.db");
    try (Store store = Store.open(database)) {
      store.endRun(InventedStore.begin(store, 5), InventedNight.minute(5));
    }
    Path left = folder.resolve("sqlite-" + SQLiteJDBCLoader.getVersion() + "-left-behind.so");
    Files.createDirectories(left.resolve("full"));

    List<Process> commands = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      commands.add(start("runs", "--db", database.toString()));
    }
    for (Process command : commands) {
      assertThat(command.waitFor()).isEqualTo(Main.DONE);
    }
    for (Path error : errors) {
      assertThat(error).isEmptyFile();
    }
  }

  @Test
  void misuseIsOneLineWithThePrefix() throws Exception {
    assertThat(start("runz").waitFor()).isEqualTo(Main.MISTAKE);
    assertThat(start("runs", "--no-such-option").waitFor()).isEqualTo(Main.MISTAKE);
    for (Path error : errors) {
      assertThat(Files.readAllLines(error)).hasSize(1).first().asString().startsWith("heatwake: ");
    }
    assertThat(errors.get(0)).hasContent("heatwake: there is no command runz; see heatwake --help");
  }
}
