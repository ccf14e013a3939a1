package heatwake.collector.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Starts {@link AcknowledgingRecorder} in a process of its own, and reads what it said. */
final class RecorderProcess {
  private RecorderProcess() {}

  /** The command that starts it, after words that are to stand before it. */
  static Process start(List<String> before, Path database, int readings, Path said)
      throws IOException {
    return start(before, database, 0, readings, said);
  }

  /** The same, beginning with the reading of some number. */
  static Process start(List<String> before, Path database, int first, int readings, Path said)
      throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of("-Xmx128m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(AcknowledgingRecorder.class.getName());
    command.add(database.toString());
    command.add(Integer.toString(readings));
    command.add(Integer.toString(first));
    return new ProcessBuilder(command)
        .redirectOutput(said.toFile())
        .redirectError(said.resolveSibling(said.getFileName() + ".err").toFile())
        .start();
  }

  /** Waits until it has said something. */
  static void awaitFirstWord(Process process, Path said) throws Exception {
    while (Files.size(said) == 0) {
      if (!process.isAlive()) {
        throw new IllegalStateException(
            Files.readString(said.resolveSibling(said.getFileName() + ".err")));
      }
      Thread.sleep(10);
    }
  }

  /** Whole lines that were said; a line cut short by a kill counts for nothing. */
  static List<String> linesOf(String said) {
    int end = said.lastIndexOf('\n');
    return end < 0 ? List.of() : said.substring(0, end).lines().toList();
  }
}
