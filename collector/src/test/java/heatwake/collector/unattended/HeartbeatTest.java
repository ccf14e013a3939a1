package heatwake.collector.unattended;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.RealProgram;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What systemd hears on its notification socket, which socat holds here in its place. */
class HeartbeatTest {
  @TempDir private Path folder;

  @Test
  void beatsForTheWatchdog() throws Exception {
    RealProgram.need("systemd-notify");
    Path socket = folder.resolve("notify");
    try (RealProgram manager =
        RealProgram.start(folder, "socat", "-u", "UNIX-RECV:" + socket, "STDOUT")) {
      Eventually.that("the socket is there", () -> Files.exists(socket));
      ProcessBuilder builder =
          new ProcessBuilder(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(),
              "-XX:TieredStopAtLevel=1",
              "-cp",
              System.getProperty("java.class.path"),
              BeatingRecorder.class.getName(),
              folder.resolve("heatwake.db").toString());
      builder.environment().put("NOTIFY_SOCKET", socket.toString());
      builder.environment().put("WATCHDOG_USEC", "3000000");
      builder.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile());
      Process recorder = builder.start();
      try {
        Eventually.that(
            "two beats",
            () -> {
              assertThat(recorder.isAlive()).as(Files.readString(folder.resolve("log"))).isTrue();
              return manager.output().split("WATCHDOG=1", -1).length > 2;
            });
      } finally {
        recorder.destroyForcibly().waitFor();
      }
    }
  }
}
