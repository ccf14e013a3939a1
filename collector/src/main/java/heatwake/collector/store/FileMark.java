package heatwake.collector.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * Tells a file from another one that took its place. Where the system has no such mark (Windows),
 * an open database cannot be replaced anyway.
 *
 * @param isThere whether there is a file
 * @param key the system's mark of it; null where there is none
 */
record FileMark(boolean isThere, Object key) {
  static FileMark of(Path file) {
    try {
      return new FileMark(true, Files.readAttributes(file, BasicFileAttributes.class).fileKey());
    } catch (IOException e) {
      return new FileMark(false, null);
    }
  }
}
