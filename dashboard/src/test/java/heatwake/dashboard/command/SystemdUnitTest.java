package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The systemd unit, checked by systemd itself. */
class SystemdUnitTest {
  @TempDir private Path folder;

  @Test
  void systemdFindsNoFault() throws Exception {
    String text =
        SystemdUnit.text(
            "Heron Lane 100 %",
            List.of("record", "/srv/my rig.toml", "--on-flag", "echo \"$X\" 5%"));
    assertThat(text)
        .contains("Description=Heatwake recorder, Heron Lane 100 %%\n")
        .contains(" record \"/srv/my rig.toml\" --on-flag \"echo \\\"$$X\\\" 5%%\"\n");
    Path unit = folder.resolve("heatwake.service");
    Files.writeString(unit, text);
    Process verify;
    try {
      verify =
          new ProcessBuilder("systemd-analyze", "verify", "--man=no", unit.toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      abort("not run: needs systemd-analyze");
      return;
    }
    String said = new String(verify.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    verify.waitFor();
    assertThat(said.lines().filter(line -> line.contains("heatwake.service"))).isEmpty();
  }
}
