package heatwake.dashboard.output;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Writes a file as a whole: whatever goes wrong on the way, the one before is still there. */
public final class WholeFile {
  private WholeFile() {}

  /** What is to be in the file. */
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes beside the file and moves it into place when all is written and on the disk. A device or
   * a pipe is written straight: there is no file before to lose.
   */
  public static void write(Path file, Content content) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      try (OutputStream out = Files.newOutputStream(file)) {
        content.writeTo(out);
      }
      return;
    }
    // What a link leads to is replaced, not the link.
    Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
    Path draft = null;
    try {
      try (FileChannel channel = begin(target);
          OutputStream out = Channels.newOutputStream(channel)) {
        draft = draftOf(target);
        content.writeTo(new LeftOpen(out));
        channel.force(true);
      }
      keepPermissions(target, draft);
      Files.move(draft, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      if (draft != null) {
        Files.deleteIfExists(draft);
      }
    }
  }

  /** Some writers close what they are given, yet it is to be synced when they are done. */
  private static final class LeftOpen extends FilterOutputStream {
    LeftOpen(OutputStream out) {
      super(out);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      out.write(bytes, from, length);
    }

    @Override
    public void close() throws IOException {
      flush();
    }
  }

  private static Path draftOf(Path target) {
    // The process number keeps two commands with one target apart.
    return target.resolveSibling(
        target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
  }

  /** Opens the draft; one that a killed command of the same number left behind gives way. */
  private static FileChannel begin(Path target) throws IOException {
    Path draft = draftOf(target);
    try {
      return FileChannel.open(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException left) {
      Files.delete(draft);
      return FileChannel.open(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    }
  }

  private static void keepPermissions(Path before, Path draft) throws IOException {
    PosixFileAttributeView view =
        Files.getFileAttributeView(draft, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    if (view != null && Files.exists(before)) {
      view.setPermissions(Files.getPosixFilePermissions(before));
    }
  }
}
