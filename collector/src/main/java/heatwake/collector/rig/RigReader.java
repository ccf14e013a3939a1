package heatwake.collector.rig;

import java.nio.file.Path;

/** Reads rig files (TOML 1.0). */
public final class RigReader {
  private RigReader() {}

  /**
   * Reads a rig file.
   *
   * @throws heatwake.collector.mistake.MistakeException naming file, line and mend
   */
  public static RigFile read(Path file) {
    throw new UnsupportedOperationException("not built yet: " + file);
  }

  /**
   * Reads a rig from text.
   *
   * @param name what to call it in messages
   * @throws heatwake.collector.mistake.MistakeException naming line and mend
   */
  public static RigFile parse(String text, String name) {
    throw new UnsupportedOperationException("not built yet: " + name + text.length());
  }
}
