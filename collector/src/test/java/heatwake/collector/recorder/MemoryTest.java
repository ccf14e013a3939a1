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

  /** So many looks, at one of which at least nothing much is on its way. */
  private static final int FEW = 3;

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
    // A look may find readings that are on their way; what is kept for good shows in all of them.
    assertThat(least(used, used.length - FEW, used.length))
        .as("bytes in use %s", Arrays.toString(used))
        .isLessThan(least(used, SETTLED_AFTER - 1, SETTLED_AFTER - 1 + FEW) + NOISE_BYTES);
    System.out.println("bytes in use while a million readings pass: " + Arrays.toString(used));
  }

  private static long least(long[] values, int from, int to) {
    return Arrays.stream(values, from, to).min().orElseThrow();
  }
}
