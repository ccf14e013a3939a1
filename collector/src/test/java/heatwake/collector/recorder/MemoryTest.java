package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A process with little memory records a million readings, and needs no more at the end. */
class MemoryTest {
  /** The virtual machine itself is still loading classes while the first are recorded. */
  private static final int SETTLED_AFTER = 3;

  private static final long NOISE_BYTES = 1_000_000;

  @TempDir private Path folder;

  @Test
  @Timeout(300)
  void isFlatOverAMillionReadings() throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx48m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                MillionReadings.class.getName(),
                folder.resolve("heatwake.db").toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    long[] used = said.lines().mapToLong(Long::parseLong).toArray();
    assertThat(used).hasSize(10);
    long[] settled = Arrays.copyOfRange(used, SETTLED_AFTER, used.length);
    assertThat(Arrays.stream(settled).max().orElseThrow())
        .as("bytes in use %s", Arrays.toString(used))
        .isLessThan(used[SETTLED_AFTER - 1] + NOISE_BYTES);
    System.out.println("bytes in use while a million readings pass: " + Arrays.toString(used));
  }
}
