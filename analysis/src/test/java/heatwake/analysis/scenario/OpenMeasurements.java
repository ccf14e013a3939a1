package heatwake.analysis.scenario;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Rig;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;

/**
 * Open measurements by other people, kept beside the checkout. A test that needs them is skipped
 * where they are absent, and fails if {@code CI=true}.
 */
public final class OpenMeasurements {
  private OpenMeasurements() {}

  /** A file of the measurements, for example {@code bench/day-a.csv}. */
  public static Path file(String name) {
    Path path = Path.of(System.getProperty("heatwake.shared", "shared"), "data").resolve(name);
    if (!Files.exists(path)) {
      if ("true".equals(System.getenv("CI"))) {
        throw new AssertionError("the open measurements are not there: " + name);
      }
      Assumptions.abort("skipped, the open measurements are not there: " + name);
    }
    return path;
  }

  /** Lines of a comma-separated file without quotes, split; the header first. */
  public static List<String[]> rows(String name) {
    try {
      return Files.readAllLines(file(name)).stream().map(line -> line.split(",", -1)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A measurement as a recording with a given rig. */
  public static Recording recording(String name, Rig rig) {
    List<String[]> rows = rows(name);
    String[] header = rows.get(0);
    Map<Channel, Series.Builder> builders = new EnumMap<>(Channel.class);
    long start = timeMs(rows.get(1));
    long end = timeMs(rows.get(rows.size() - 1));
    for (int c = 1; c < header.length; c++) {
      int bracket = header[c].indexOf(" [");
      Channel channel = Channel.of(header[c].substring(0, bracket));
      Unit unit =
          Unit.of(channel.quantity(), header[c].substring(bracket + 2, header[c].lastIndexOf(']')));
      Series.Builder builder = Series.of(channel);
      builders.put(channel, builder);
      for (String[] row : rows.subList(1, rows.size())) {
        if (!row[c].isEmpty()) {
          builder.add(timeMs(row), unit.toSi(Double.parseDouble(row[c])));
        }
      }
    }
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    builders.forEach((channel, builder) -> series.put(channel, builder.build()));
    return new Recording(1, rig, start, end, series, List.of(), List.of());
  }

  public static long timeMs(String[] row) {
    return OffsetDateTime.parse(row[0]).toInstant().toEpochMilli();
  }
}
