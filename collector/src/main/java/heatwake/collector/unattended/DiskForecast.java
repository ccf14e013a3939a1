package heatwake.collector.unattended;

import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.RigFile;
import java.nio.file.Path;
import java.util.Locale;

/**
 * How long the disk will last.
 *
 * @param bytesPerDay what the recording takes a day
 * @param freeBytes what is free
 */
public record DiskForecast(double bytesPerDay, long freeBytes) {
  /** Measured; see docs/performance.md. */
  private static final double BYTES_PER_READING = 21;

  /** Where the rig states no interval. */
  private static final double USUAL_INTERVAL_S = 1;

  private static final double SECONDS_PER_DAY = 86_400;
  private static final double BYTES_PER_MB = 1e6;
  private static final double BYTES_PER_GB = 1e9;

  /**
   * The forecast for a rig, before anything has come: one reading a second where none is stated.
   */
  public static DiskForecast of(Iterable<RigFile> rigs, Path database) {
    double readingsPerS = 0;
    for (RigFile rig : rigs) {
      for (ProbeSpec probe : rig.probes()) {
        readingsPerS += 1 / probe.intervalS().orElse(USUAL_INTERVAL_S);
      }
    }
    return new DiskForecast(
        readingsPerS * SECONDS_PER_DAY * BYTES_PER_READING, freeBytesAt(database));
  }

  /**
   * Bytes free where a file is. Asked of the folder, not of its mount point: inside a container
   * that may not be told.
   */
  static long freeBytesAt(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    return (folder == null ? file : folder).toFile().getUsableSpace();
  }

  /** Days until the disk is full. */
  public double days() {
    return freeBytes / bytesPerDay;
  }

  /** In words, for the log. */
  public String text() {
    return String.format(
        Locale.ROOT,
        "about %.1f MB a day (one reading a second where the rig states no interval); %s are free,"
            + " enough for %s",
        bytesPerDay / BYTES_PER_MB,
        freeBytes < BYTES_PER_GB
            ? String.format(Locale.ROOT, "%.0f MB", freeBytes / BYTES_PER_MB)
            : String.format(Locale.ROOT, "%.1f GB", freeBytes / BYTES_PER_GB),
        daysInWords());
  }

  private String daysInWords() {
    if (days() > 3650) {
      return "more than ten years";
    }
    return days() < 2
        ? String.format(Locale.ROOT, "%.0f hours", Math.floor(days() * 24))
        : String.format(Locale.ROOT, "%.0f days", Math.floor(days()));
  }
}
