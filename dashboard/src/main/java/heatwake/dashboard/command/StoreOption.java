package heatwake.dashboard.command;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The option that names the database. */
final class StoreOption {
  @Option(
      names = "--db",
      paramLabel = "FILE",
      description = "Database; default heatwake/heatwake.db in your data folder.")
  private Path file;

  /** The database to use: the one named, else the one in the person's data folder. */
  Path file() {
    if (file != null) {
      return file;
    }
    String dataHome = System.getenv("XDG_DATA_HOME");
    Path folder =
        // One that is not absolute is to be ignored (XDG Base Directory Specification 0.8).
        dataHome == null || dataHome.isBlank() || !Path.of(dataHome).isAbsolute()
            ? Path.of(System.getProperty("user.home"), ".local", "share")
            : Path.of(dataHome);
    return folder.resolve("heatwake").resolve("heatwake.db");
  }
}
