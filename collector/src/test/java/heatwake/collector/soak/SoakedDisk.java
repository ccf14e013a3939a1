package heatwake.collector.soak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file system of its own for the database, which can be made full; an ordinary folder where the
 * right to mount one is missing.
 */
final class SoakedDisk implements AutoCloseable {
  private static final long PLENTY_BYTES = 4_000_000_000L;
  private static final long PAGE_BYTES = 4096;

  private final Path folder;
  private final boolean mounted;

  private SoakedDisk(Path folder, boolean mounted) {
    this.folder = folder;
    this.mounted = mounted;
  }

  static SoakedDisk mount(Path folder) throws IOException {
    Files.createDirectory(folder);
    return new SoakedDisk(
        folder,
        run("mount", "-t", "tmpfs", "-o", "size=" + PLENTY_BYTES, "tmpfs", folder.toString()));
  }

  Path folder() {
    return folder;
  }

  /** Whether it can be made full. */
  boolean canBeFull() {
    return mounted;
  }

  /** Leaves as much room as is taken, and no more. */
  void fill() throws Exception {
    // What is written between looking and shrinking makes the first attempts fail.
    while (!resize(used())) {
      Thread.sleep(1);
    }
  }

  void free() throws IOException {
    if (!resize(PLENTY_BYTES)) {
      throw new IllegalStateException("the disk cannot be freed");
    }
  }

  private long used() {
    long bytes = folder.toFile().getTotalSpace() - folder.toFile().getFreeSpace();
    return Math.max(PAGE_BYTES, bytes);
  }

  private boolean resize(long bytes) throws IOException {
    return run("mount", "-o", "remount,size=" + bytes, folder.toString());
  }

  private static boolean run(String... command) throws IOException {
    return new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start()
            .onExit()
            .join()
            .exitValue()
        == 0;
  }

  @Override
  public void close() throws IOException {
    if (mounted) {
      run("umount", folder.toString());
    }
  }
}
