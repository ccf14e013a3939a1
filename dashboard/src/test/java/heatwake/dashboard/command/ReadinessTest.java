package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What systemd hears of a recorder process on its datagram socket, which socat holds here. */
@Timeout(120)
class ReadinessTest {
  @TempDir Path folder;

  @Test
  void readyThoughNoSourceIsReachableAndStoppingOnSigterm() throws Exception {
    assumeTrue(isThere("socat"), "not run: needs socat");
    assumeTrue(isThere("systemd-notify"), "not run: needs systemd-notify");
    Path socket = folder.resolve("notify");
    Path rig = folder.resolve("rig.toml");
    Files.writeString(
        rig,
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "clips"
        serial = "/dev/not-plugged-in"
        [[source]]
        name = "wifi"
        mqtt = "mqtt://127.0.0.1:1"
        [[probe]]
        channel = "power"
        source = "clips"
        field = "p"
        unit = "W"
        [[probe]]
        channel = "water-in"
        source = "wifi"
        topic = "heron/in"
        unit = "Cel"
        """);
    Process manager = new ProcessBuilder("socat", "-u", "UNIX-RECV:" + socket, "STDOUT").start();
    try {
      while (!Files.exists(socket)) {
        Thread.sleep(20);
      }
      ProcessBuilder builder =
          new ProcessBuilder(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(),
              "-cp",
              System.getProperty("java.class.path"),
              Main.class.getName(),
              "record",
              rig.toString(),
              "--db",
              folder.resolve("h.db").toString());
      builder.environment().put("NOTIFY_SOCKET", socket.toString());
      builder.environment().remove("WATCHDOG_USEC");
      builder.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile());
      Process recorder = builder.start();
      try {
        awaitWord(manager, "READY=1");
        assertThat(Files.readString(folder.resolve("log"))).contains("recording run 1");
        recorder.destroy();
        awaitWord(manager, "STOPPING=1");
        assertThat(recorder.waitFor()).isEqualTo(Main.DONE);
      } finally {
        recorder.destroyForcibly().waitFor();
      }
    } finally {
      manager.destroyForcibly().waitFor();
    }
  }

  private static void awaitWord(Process manager, String word) throws IOException {
    InputStream heard = manager.getInputStream();
    StringBuilder all = new StringBuilder();
    while (!all.toString().endsWith(word)) {
      int next = heard.read();
      assertThat(next).as("heard only: %s", all).isNotNegative();
      all.append((char) next);
    }
  }

  private static boolean isThere(String program) throws Exception {
    return new ProcessBuilder("sh", "-c", "command -v " + program).start().waitFor() == 0;
  }
}
