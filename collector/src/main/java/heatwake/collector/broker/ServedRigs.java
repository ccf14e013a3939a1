package heatwake.collector.broker;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Collection;
import java.util.List;

/** Finds the rigs that have a source at a broker of ours. */
final class ServedRigs {
  private static final int USUAL_PORT = 1883;

  private ServedRigs() {}

  /**
   * Those of some rigs that read from a broker on this machine.
   *
   * @param port port it listens on
   * @return all of them if none does: what it has to tell must stand somewhere
   */
  static List<RigFile> among(Collection<RigFile> rigs, int port) {
    List<RigFile> served = rigs.stream().filter(rig -> reads(rig, port)).toList();
    return served.isEmpty() ? List.copyOf(rigs) : served;
  }

  private static boolean reads(RigFile rig, int port) {
    return rig.sources().stream()
        .anyMatch(source -> source instanceof SourceSpec.Mqtt mqtt && isAt(mqtt.url(), port));
  }

  private static boolean isAt(String url, int port) {
    try {
      URI uri = new URI(url);
      int named = uri.getPort() < 0 ? USUAL_PORT : uri.getPort();
      return "mqtt".equals(uri.getScheme()) && named == port && isThisMachine(uri.getHost());
    } catch (URISyntaxException bad) {
      return false;
    }
  }

  private static boolean isThisMachine(String host) {
    try {
      InetAddress address = InetAddress.getByName(host);
      return address.isLoopbackAddress() || NetworkInterface.getByInetAddress(address) != null;
    } catch (IOException unknown) {
      return false;
    }
  }
}
