package heatwake.collector.unattended;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reference: 21 bytes a reading, measured (docs/performance.md), times readings a day. */
class DiskForecastTest {
  @TempDir private Path folder;

  private static final RigFile RIG =
      RigReader.parse(
          """
          [site]
          name = "Heron Lane"
          [[probe]]
          channel = "power"
          every = "10 s"
          [[probe]]
          channel = "current"
          """,
          "rig.toml");

  @Test
  void countsWhatTheRigStatesAndOneASecondOtherwise() {
    DiskForecast forecast = DiskForecast.of(List.of(RIG, RIG), folder.resolve("heatwake.db"));
    assertThat(forecast.bytesPerDay()).isCloseTo(2 * 1.1 * 86_400 * 21, within(1e-6));
    assertThat(forecast.freeBytes()).isPositive();
    assertThat(forecast.days())
        .isCloseTo(forecast.freeBytes() / forecast.bytesPerDay(), within(1e-9));
  }

  @Test
  void saysSoInWords() {
    assertThat(new DiskForecast(29e6, 2_000_000_000L).text())
        .isEqualTo(
            "about 29.0 MB a day (one reading a second where the rig states no interval); 2.0 GB"
                + " are free, enough for 68 days");
    assertThat(new DiskForecast(5e6, 6_200_000L).text())
        .endsWith("; 6 MB are free, enough for 29 hours");
    assertThat(new DiskForecast(1e6, 80_000_000_000L).text()).endsWith("more than ten years");
  }
}
