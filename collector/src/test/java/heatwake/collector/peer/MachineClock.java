package heatwake.collector.peer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The clock that a process of its own sees, to be set while it runs. Debian's libfaketime answers
 * the process's questions for the time of day; its monotonic clock and the machine's clock are left
 * alone.
 */
public final class MachineClock {
  private final Path library;
  private final Path setting;

  private MachineClock(Path library, Path setting) {
    this.library = library;
    this.setting = setting;
  }

  /** A clock that is right, or nothing where libfaketime is not installed. */
  public static Optional<MachineClock> in(Path folder) throws IOException {
    Optional<Path> library = library();
    if (library.isEmpty()) {
      return Optional.empty();
    }
    MachineClock clock = new MachineClock(library.get(), folder.resolve("clock"));
    clock.set(0);
    return Optional.of(clock);
  }

  private static Optional<Path> library() throws IOException {
    try (Stream<Path> machines = Files.list(Path.of("/usr/lib"))) {
      return machines
          .map(machine -> machine.resolve("faketime/libfaketimeMT.so.1"))
          .filter(Files::exists)
          .findFirst();
    }
  }

  /** Sets it to so many seconds ahead of the true time; negative is behind. */
  public void set(long aheadS) throws IOException {
    Path next = setting.resolveSibling(setting.getFileName() + ".next");
    Files.writeString(next, (aheadS < 0 ? "" : "+") + aheadS + "\n");
    // At once, so that no process finds half a number.
    Files.move(next, setting, StandardCopyOption.ATOMIC_MOVE);
  }

  /** What makes a process see it. */
  public Map<String, String> environment() {
    return Map.of(
        "LD_PRELOAD", library.toString(),
        "FAKETIME_TIMESTAMP_FILE", setting.toString(),
        "FAKETIME_NO_CACHE", "1",
        "FAKETIME_DONT_FAKE_MONOTONIC", "1",
        // Else waits that go by the monotonic clock end at once after a step.
        "FAKETIME_FORCE_MONOTONIC_FIX", "0");
  }
}
