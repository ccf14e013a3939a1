package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WindowCommandTest {
  @TempDir Path folder;

  @Test
  void withoutADisplayItSaysInOneLineWhatToDoInstead() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "heatwake.dashboard.command.Main",
                "window",
                "--db",
                folder.resolve("none.db").toString())
            .start();
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isEqualTo(2);
    assertThat(said.lines()).hasSize(1);
    assertThat(said).contains("no display").contains("heatwake report --db");
  }
}
