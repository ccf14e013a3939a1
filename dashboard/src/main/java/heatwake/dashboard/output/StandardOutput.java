package heatwake.dashboard.output;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;

/** Standard output as a place for much text, which whoever reads it may leave early. */
public final class StandardOutput {
  private StandardOutput() {}

  /**
   * Writes to it. A reader that has gone, such as {@code head}, has what it wanted: that is no
   * fault.
   *
   * @throws IOException saying reason and mend
   */
  public static void write(WholeFile.Content content) throws IOException {
    write(new FileOutputStream(FileDescriptor.out), content);
  }

  /** The same for any stream, which is left open: standard output is not ours to close. */
  static void write(OutputStream out, WholeFile.Content content) throws IOException {
    try {
      content.writeTo(out);
    } catch (UncheckedIOException e) {
      tell(e.getCause());
    } catch (IOException e) {
      tell(e);
    }
  }

  private static void tell(IOException fault) throws IOException {
    if (!"Broken pipe".equals(fault.getMessage())) {
      throw new IOException(
          "standard output: cannot be written ("
              + fault.getMessage()
              + "); free some space or name another place",
          fault);
    }
  }
}
