package heatwake.collector.source;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.serial.PortFinder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Two sources on one serial port would each get half of every line. */
final class PortsApart {
  private PortsApart() {}

  /**
   * Refuses rigs of which two sources mean the same port, be it by different names or links.
   *
   * @throws heatwake.collector.mistake.MistakeException naming both
   */
  static void require(Collection<RigFile> rigs, PortFinder ports) {
    Map<Path, String> users = new HashMap<>();
    for (RigFile rig : rigs) {
      for (SourceSpec source : rig.sources()) {
        Optional<Path> port =
            source
                .ownPort()
                .flatMap(named -> ports.path(named, Optional.empty()))
                .map(PortsApart::real);
        String user = "source \"" + source.name() + "\" of " + rig.name();
        String other = port.isPresent() ? users.putIfAbsent(port.get(), user) : null;
        if (other != null) {
          throw rig.mistake(
              source,
              source instanceof SourceSpec.Serial ? "serial" : "modbus-rtu",
              source.onOnePort(other));
        }
      }
    }
  }

  /** Where a link leads; a port that is not there now is taken by its name. */
  private static Path real(String path) {
    Path named = Path.of(path.startsWith("/") || path.contains("\\") ? path : "/dev/" + path);
    try {
      return named.toRealPath();
    } catch (IOException absent) {
      return named.normalize();
    }
  }
}
