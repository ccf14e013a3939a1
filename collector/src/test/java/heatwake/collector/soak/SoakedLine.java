package heatwake.collector.soak;

import heatwake.collector.peer.PtyPair;
import java.io.IOException;
import java.nio.file.Path;

/** The serial cable, which several at the far end may hold at a time. */
final class SoakedLine implements AutoCloseable {
  private final PtyPair cable;

  private SoakedLine(PtyPair cable) {
    this.cable = cable;
  }

  static SoakedLine plugged(Path folder) throws Exception {
    return new SoakedLine(PtyPair.plugged(folder, "clips"));
  }

  String port() {
    return cable.port();
  }

  synchronized void send(String text) throws IOException {
    cable.send(text);
  }

  synchronized void send(byte[] bytes) throws IOException {
    cable.send(bytes);
  }

  synchronized void pull() throws Exception {
    cable.unplug();
  }

  synchronized void plug() throws Exception {
    cable.plug();
  }

  synchronized void replugElsewhere() throws Exception {
    cable.replugElsewhere();
  }

  @Override
  public synchronized void close() {
    cable.close();
  }
}
