package heatwake.collector.unattended;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The status in a file, replaced as a whole: who reads it never sees half of it. */
public final class StatusFile implements StatusOutlet {
  private static final Logger LOG = LoggerFactory.getLogger(StatusFile.class);

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

  @Override
  public void close() {
    try {
      put(STOPPED);
    } catch (IOException e) {
      LOG.warn("the status could not be told: {}", e.getMessage());
    }
  }
}
