package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PortsApartTest {
  @TempDir private Path folder;

  private static RigFile rig(String name, String port) {
    return RigReader.parse(
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "clips"
        serial = "%s"
        """
            .formatted(port),
        name);
  }

  @Test
  void refusesTwoLinksToOneLine() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "clips")) {
      Path link = Files.createSymbolicLink(folder.resolve("again"), Path.of("" + cable.port()));
      RigFile one = rig("one.toml", cable.port().toString());
      assertThatThrownBy(
              () -> ProbeSources.requirePortsApart(List.of(one, rig("two.toml", link.toString()))))
          .isInstanceOf(MistakeException.class)
          .hasMessageStartingWith(
              "two.toml:5: source \"clips\" is on the same port as source \"clips\" of one.toml, ");
      assertThatCode(
              () -> ProbeSources.requirePortsApart(List.of(one, rig("two.toml", "/dev/absent"))))
          .doesNotThrowAnyException();
    }
  }

  @Test
  void aRigThatNamesOnePortTwiceIsRefusedWhenItIsRead() {
    assertThatThrownBy(
            () ->
                RigReader.parse(
                    """
                    [site]
                    name = "Heron Lane"
                    [[source]]
                    name = "clips"
                    serial = "/dev/ttyUSB0"
                    [[source]]
                    name = "meter"
                    modbus-rtu = "/dev/ttyUSB0"
                    """,
                    "rig.toml"))
        .isInstanceOf(MistakeException.class)
        .hasMessageContaining(
            "source \"meter\" is on the same port as source \"clips\", /dev/ttyUSB0; give each");
  }
}
