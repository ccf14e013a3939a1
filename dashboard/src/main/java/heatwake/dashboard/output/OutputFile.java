package heatwake.dashboard.output;

import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * A file that an option names to be written. It is looked at before anything is opened: it must not
 * be one that the command reads, and never a database.
 */
public final class OutputFile {
  /** First bytes of every SQLite 3 file (SQLite, "Database File Format", 1.3.1). */
  private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  /** Files that belong to a database: SQLite's own beside it, and our locks. */
  private static final List<String> BESIDE_A_DATABASE =
      List.of("-wal", "-shm", "-journal", "-recording");

  private final String option;
  private final Path file;

  private OutputFile(String option, Path file) {
    this.option = option;
    this.file = file;
  }

  /**
   * A file to be written.
   *
   * @param option as the person wrote it, {@code "-o"}
   * @throws MistakeException if it cannot be written, or is a database
   */
  public static OutputFile of(String option, Path file) {
    OutputFile output = new OutputFile(option, file);
    if (Files.isDirectory(file)) {
      throw output.refused("is a folder; name a file");
    }
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw output.refused("its folder does not exist; make it or name another file");
    }
    boolean inPlace = Files.exists(file) && !Files.isRegularFile(file);
    if ((Files.exists(file) && !Files.isWritable(file))
        || (!inPlace && !Files.isWritable(folder))) {
      throw output.refused("cannot be written; check its permissions or name another file");
    }
    if (output.isDatabase()) {
      throw output.refused("is an SQLite database and would be lost; name another file");
    }
    return output;
  }

  /**
   * Refuses a file that the command reads.
   *
   * @param what what it is, {@code "the rig"}
   * @throws MistakeException if this is the same file, by whatever name
   */
  public OutputFile apartFrom(Path read, String what) {
    if (isSame(file, read)) {
      throw refused("is " + what + " and would be lost; name another file");
    }
    return this;
  }

  /**
   * Refuses a database and what belongs to it.
   *
   * @throws MistakeException if this is one of its files, by whatever name
   */
  public OutputFile apartFromDatabase(Path database) {
    apartFrom(database, "the database");
    Path real = place(database);
    for (String ending : BESIDE_A_DATABASE) {
      apartFrom(real.resolveSibling(real.getFileName() + ending), "part of the database");
    }
    return this;
  }

  /**
   * Refuses another output of the same command.
   *
   * @throws MistakeException if both are the same file
   */
  public OutputFile apartFromOutput(OutputFile other) {
    if (isSame(file, other.file)) {
      throw new MistakeException(
          option + " and " + other.option + " both name " + file + "; name two files");
    }
    return this;
  }

  /**
   * Writes the file as a whole.
   *
   * @throws IOException saying file, reason and mend
   */
  public void write(WholeFile.Content content) throws IOException {
    try {
      WholeFile.write(file, content);
    } catch (UncheckedIOException e) {
      throw failed(e.getCause());
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private IOException failed(IOException fault) {
    String reason =
        fault instanceof FileSystemException named && named.getReason() != null
            ? named.getReason()
            : fault.getMessage();
    return new IOException(
        file + ": cannot be written (" + reason + "); name another file with " + option, fault);
  }

  private MistakeException refused(String why) {
    return new MistakeException(file + ": " + why + " with " + option);
  }

  private boolean isDatabase() {
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(SQLITE.length), SQLITE);
    } catch (IOException e) {
      // Not to be read, so not to be told apart from a database.
      return true;
    }
  }

  /** Whether two paths lead to one file, there or yet to be made. */
  public static boolean isSame(Path one, Path other) {
    try {
      if (Files.exists(one) && Files.exists(other)) {
        return Files.isSameFile(one, other);
      }
      return place(one).equals(place(other));
    } catch (IOException e) {
      return place(one).equals(place(other));
    }
  }

  /** Where a path leads, also where there is no file yet. */
  private static Path place(Path path) {
    Path absolute = path.toAbsolutePath();
    try {
      if (Files.exists(absolute)) {
        return absolute.toRealPath();
      }
      Path folder = absolute.getParent();
      return folder == null ? absolute : folder.toRealPath().resolve(absolute.getFileName());
    } catch (IOException e) {
      return absolute.normalize();
    }
  }
}
