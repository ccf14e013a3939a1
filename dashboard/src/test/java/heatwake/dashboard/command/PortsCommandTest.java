package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.frame.LineGuess;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.rig.SourceSpec;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class PortsCommandTest {
  @TempDir private Path folder;

  private static String filledIn(String skeleton) {
    return skeleton.replace(RigSkeleton.CHANNEL, "water-in").replace(RigSkeleton.UNIT, "Cel");
  }

  @Test
  void skeletonIsARigOnceChannelAndUnitAreFilledIn() {
    LineGuess guess =
        LineGuess.of(
                List.of(
                    "{\"s\":{\"t~1/\\\"x\":23.4},\"at\":\"2031-05-04T18:00:00Z\"}",
                    "{\"s\":{\"t~1/\\\"x\":23.5},\"at\":\"2031-05-04T18:00:01Z\"}"))
            .orElseThrow();
    RigFile rig =
        RigReader.parse(
            filledIn(RigSkeleton.of("port1", "/dev/ttyUSB0", 115_200, guess)), "rig.toml");
    assertThat(rig.sources())
        .containsExactly(
            new SourceSpec.Serial("port1", "/dev/ttyUSB0", 115_200, SourceSpec.LineFormat.JSON));
    assertThat(rig.probes())
        .singleElement()
        .matches(probe -> probe.channel() == Channel.WATER_IN)
        .matches(probe -> probe.time().equals(Optional.of("/at")))
        .extracting(ProbeSpec::address)
        .isEqualTo(new ProbeSpec.Address.Field("/s/t~01~1\"x"));
  }

  @Test
  void onlyObviousNamesAreGuessedAt() {
    assertThat(RigSkeleton.perhaps("/data/water_in")).contains(Channel.WATER_IN);
    assertThat(RigSkeleton.perhaps("outlet")).contains(Channel.WATER_OUT);
    assertThat(RigSkeleton.perhaps("power")).contains(Channel.POWER);
    assertThat(RigSkeleton.perhaps("t1")).isEmpty();
    assertThat(RigSkeleton.perhaps("3")).isEmpty();
  }

  @Test
  void listeningToAPortPrintsWhatToWriteForIt() throws Exception {
    Path near = folder.resolve("near");
    Path far = folder.resolve("far");
    if (!Files.isExecutable(Path.of("/usr/bin/socat"))) {
      Assertions.assertNotEquals("true", System.getenv("CI"), "socat is not installed");
      Assumptions.abort("socat is not installed");
    }
    Process socat =
        new ProcessBuilder(
                "/usr/bin/socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
            .start();
    try {
      while (!Files.exists(near) || !Files.exists(far)) {
        assertThat(socat.isAlive()).isTrue();
        Thread.sleep(20);
      }
      Thread device =
          new Thread(
              () -> {
                try (var out = Files.newOutputStream(far)) {
                  while (true) {
                    out.write(
                        "inlet=27.5 t2=29.5 mode=heat t3=--\r\n".getBytes(StandardCharsets.UTF_8));
                    out.flush();
                    Thread.sleep(50);
                  }
                } catch (Exception end) {
                  Thread.currentThread().interrupt();
                }
              });
      device.setDaemon(true);
      device.start();
      StringWriter out = new StringWriter();
      int status =
          new CommandLine(new PortsCommand())
              .setOut(new PrintWriter(out))
              .setErr(new PrintWriter(new StringWriter()))
              .execute("--listen", "--seconds", "3", near.toString());
      device.interrupt();
      assertThat(status).isEqualTo(Main.DONE);
      assertThat(out.toString())
          .contains("# it says \"inlet=27.5 t2=29.5 mode=heat")
          .contains("channel = \"CHANNEL\"            # perhaps water-in, in Cel?")
          .contains("never said a number")
          .contains("#   \"mode\" last said \"heat\"\n#   \"t3\" last said \"--\"\n");
      RigFile rig =
          RigReader.parse(
              out.toString()
                  .replaceFirst(RigSkeleton.CHANNEL + "\"", "water-in\"")
                  .replaceFirst("\"" + RigSkeleton.CHANNEL + "\"", "\"water-out\"")
                  .replace("\"" + RigSkeleton.UNIT + "\"", "\"Cel\""),
              "rig.toml");
      assertThat(rig.probes())
          .extracting(ProbeSpec::address)
          .containsExactly(new ProbeSpec.Address.Field("inlet"), new ProbeSpec.Address.Field("t2"));
    } finally {
      socat.destroy();
    }
  }
}
