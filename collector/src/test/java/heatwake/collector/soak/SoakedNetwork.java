package heatwake.collector.soak;

import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.RealProgram;
import java.nio.file.Path;

/** The network between broker and recorder. */
final class SoakedNetwork implements AutoCloseable {
  private final Path folder;
  private final int port;
  private final int brokerPort;
  private RealProgram cable;

  private SoakedNetwork(Path folder, int port, int brokerPort) {
    this.folder = folder;
    this.port = port;
    this.brokerPort = brokerPort;
  }

  static SoakedNetwork joined(Path folder, int brokerPort) throws Exception {
    SoakedNetwork network = new SoakedNetwork(folder, Mosquitto.freePort(), brokerPort);
    network.join();
    return network;
  }

  /** Where the recorder finds the broker. */
  int port() {
    return port;
  }

  void join() throws Exception {
    cable =
        RealProgram.start(
            folder,
            "socat",
            "TCP-LISTEN:" + port + ",bind=127.0.0.1,reuseaddr,fork",
            "TCP:127.0.0.1:" + brokerPort);
  }

  void cut() throws InterruptedException {
    cable.killWithChildren();
  }

  @Override
  public void close() {
    cable.close();
  }
}
