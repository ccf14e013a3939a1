package heatwake.collector.peer;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Two pseudo-terminals joined by socat: a serial cable whose far end is the test's. */
public final class PtyPair implements AutoCloseable {
  private final Path folder;
  private final Path near;
  private final Path far;
  private RealProgram socat;
  private OutputStream out;

  private PtyPair(Path folder, String name) {
    this.folder = folder;
    this.near = folder.resolve(name);
    this.far = folder.resolve(name + "-far");
  }

  /** Plugs in a cable whose near end has this name in a folder. */
  public static PtyPair plugged(Path folder, String name) throws Exception {
    PtyPair pair = new PtyPair(folder, name);
    pair.plug();
    return pair;
  }

  /** Plugs it in, under the names it had before. */
  public void plug() throws Exception {
    socat =
        RealProgram.start(
            folder, "socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far);
    Eventually.that(
        "socat made " + near,
        () -> {
          if (!socat.isRunning()) {
            throw new IllegalStateException(socat.output());
          }
          return Files.exists(near) && Files.exists(far);
        });
    out = Files.newOutputStream(far);
  }

  /**
   * Pulls it out and plugs it in so that the system gives it other device names; the names that it
   * had before lead there, as the links of a device's identity do.
   */
  public void replugElsewhere() throws Exception {
    // While the old one still holds its device the system cannot give it out again.
    PtyPair other = plugged(folder, near.getFileName() + "-elsewhere");
    unplug();
    Files.move(other.near, near);
    Files.move(other.far, far);
    socat = other.socat;
    out = other.out;
  }

  /** Pulls it out. */
  public void unplug() throws Exception {
    closeFarEnd();
    socat.kill();
    Files.deleteIfExists(near);
    Files.deleteIfExists(far);
  }

  private void closeFarEnd() {
    try {
      out.close();
    } catch (IOException gone) {
      // A pulled cable has nothing left to close.
    }
  }

  /** Path of the end that a rig names. */
  public String port() {
    return near.toString();
  }

  /** Path of the far end, for a program that is to sit there. */
  public Path far() {
    return far;
  }

  /** Sends text from the far end. */
  public void send(String text) throws IOException {
    send(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Sends bytes from the far end. */
  public void send(byte[] bytes) throws IOException {
    out.write(bytes);
    out.flush();
  }

  @Override
  public void close() {
    closeFarEnd();
    socat.close();
  }
}
