package heatwake.collector.soak;

import heatwake.collector.peer.MachineClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The recorder's process. */
final class RecorderUnderSoak implements AutoCloseable {
  private static final int LINES_OF_NOTE = 60;

  private final Path rig;
  private final Path database;
  private final long readingsInARun;
  private final Path log;
  private final Map<String, String> clock;
  private Process process;

  /** One that goes by the machine's clock. */
  RecorderUnderSoak(Path folder, Path rig, Path database, long readingsInARun) {
    this(folder, rig, database, readingsInARun, Map.of());
  }

  /** One whose clock can be set. */
  RecorderUnderSoak(Path folder, Path rig, Path database, long readingsInARun, MachineClock clock) {
    this(folder, rig, database, readingsInARun, clock.environment());
  }

  private RecorderUnderSoak(
      Path folder, Path rig, Path database, long readingsInARun, Map<String, String> clock) {
    this.clock = clock;
    this.rig = rig;
    this.database = database;
    this.readingsInARun = readingsInARun;
    this.log = folder.resolve("recorder.log");
  }

  void start() throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                SoakedRecorder.class.getName(),
                rig.toString(),
                database.toString(),
                Long.toString(readingsInARun))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    builder.environment().putAll(clock);
    process = builder.start();
  }

  /** As a service manager does. */
  void stop() throws InterruptedException {
    process.destroy();
    process.waitFor();
  }

  /** As a power cut does. */
  void kill() throws InterruptedException {
    process.destroyForcibly();
    process.waitFor();
  }

  /** How often it has said something in its log. */
  long said(String text) throws IOException {
    if (process == null) {
      return 0;
    }
    try (Stream<String> lines = Files.lines(log)) {
      return lines.filter(line -> line.contains(text)).count();
    }
  }

  /** The latest lines of its log. */
  String lastSaid() throws IOException {
    List<String> lines = Files.readAllLines(log);
    return String.join(
        "\n", lines.subList(Math.max(0, lines.size() - LINES_OF_NOTE), lines.size()));
  }

  /** Fails the soak, with what it said, if it has ended by itself. */
  void mustLive() throws IOException {
    if (!process.isAlive()) {
      throw new IllegalStateException(Files.readString(log));
    }
  }

  @Override
  public void close() {
    if (process == null) {
      return;
    }
    try {
      kill();
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }
}
