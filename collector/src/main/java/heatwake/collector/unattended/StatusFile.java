package heatwake.collector.unattended;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** The status in a file, replaced as a whole: who reads it never sees half of it. */
public final class StatusFile implements StatusOutlet {
  private final Path file;

  public StatusFile(Path file) {
    this.file = file.toAbsolutePath();
  }

  @Override
  public void put(String json) throws IOException {
    Path next = file.resolveSibling(file.getFileName() + ".next");
    Files.writeString(next, json + "\n");
    Files.move(next, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
