package heatwake.collector.peer;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A program of the machine that a test talks to. Where it is not installed the test is skipped,
 * naming it; under {@code CI=true} it fails instead.
 */
public final class RealProgram implements AutoCloseable {
  private final Process process;
  private final Path output;

  private RealProgram(Process process, Path output) {
    this.process = process;
    this.output = output;
  }

  /** Skips (or, under CI, fails) the test unless the program is installed. */
  public static String need(String program) {
    if (program.startsWith("/")) {
      return Files.isExecutable(Path.of(program)) ? program : absent(program + " is not installed");
    }
    for (String folder :
        (System.getenv("PATH") + File.pathSeparator + "/usr/sbin").split(File.pathSeparator, -1)) {
      Path candidate = Path.of(folder, program);
      if (Files.isExecutable(candidate)) {
        return candidate.toString();
      }
    }
    return absent(program + " is not installed");
  }

  /** Skips the test, or fails it under {@code CI=true}. */
  public static String absent(String what) {
    if ("true".equals(System.getenv("CI"))) {
      fail(what);
    }
    return abort(what);
  }

  /** Starts a program that keeps running. */
  public static RealProgram start(Path folder, String program, String... arguments)
      throws IOException {
    Path output = Files.createTempFile(folder, Path.of(program).getFileName().toString(), ".log");
    List<String> command = new ArrayList<>();
    command.add(need(program));
    command.addAll(Arrays.asList(arguments));
    return new RealProgram(
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start(),
        output);
  }

  /** Runs a program to its end and returns what it printed; it must succeed. */
  public static String run(Path folder, String program, String... arguments)
      throws IOException, InterruptedException {
    return run(folder, new byte[0], program, arguments);
  }

  /** Runs a program to its end with something on its standard input. */
  public static String run(Path folder, byte[] input, String program, String... arguments)
      throws IOException, InterruptedException {
    try (RealProgram running = start(folder, program, arguments)) {
      try (var stdin = running.process.getOutputStream()) {
        stdin.write(input);
      }
      if (!running.process.waitFor(60, TimeUnit.SECONDS)) {
        return fail(program + " does not end: " + running.output());
      }
      if (running.process.exitValue() != 0) {
        return fail(program + " failed: " + running.output());
      }
      return running.output();
    }
  }

  /** What it has printed so far. */
  public String output() throws IOException {
    return Files.readString(output, StandardCharsets.UTF_8);
  }

  public boolean isRunning() {
    return process.isAlive();
  }

  /** Kills it as a power cut would. */
  public void kill() throws InterruptedException {
    process.destroyForcibly();
    process.waitFor();
  }

  /** Kills it and what it started. */
  public void killWithChildren() throws InterruptedException {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    kill();
  }

  @Override
  public void close() {
    process.descendants().forEach(ProcessHandle::destroy);
    process.destroy();
    try {
      if (!process.waitFor(5, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException hurry) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
