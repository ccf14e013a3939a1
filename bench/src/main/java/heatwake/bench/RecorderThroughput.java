package heatwake.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/**
 * Durable readings a second through the recorder, against the other {@link DurableWay}s. Each turn
 * goes through all of them; which one begins changes from turn to turn. First with a process of its
 * own for each measurement, which counts what is done once (loading the library, compiling), then in
 * one process that is warm.
 */
public final class RecorderThroughput {
  private static final int TURNS = 6;

  private RecorderThroughput() {}

  /**
   * Measures and prints.
   *
   * @param arguments none; or the name of one way, which is then measured once and its seconds are
   *     printed
   */
  public static void main(String[] arguments)
      throws IOException, InterruptedException, SQLException {
    if (arguments.length == 1) {
      System.out.println(inThisProcess(DurableWay.valueOf(arguments[0])));
      return;
    }
    turns("a process each", RecorderThroughput::inItsOwnProcess);
    for (DurableWay way : DurableWay.values()) {
      inThisProcess(way);
    }
    turns("one warm process", RecorderThroughput::inThisProcess);
  }

  /** How one way is measured once, in seconds. */
  private interface Measurement {
    double seconds(DurableWay way) throws IOException, InterruptedException, SQLException;
  }

  private static void turns(String title, Measurement measurement)
      throws IOException, InterruptedException, SQLException {
    DurableWay[] ways = DurableWay.values();
    Map<DurableWay, double[]> ratios = new EnumMap<>(DurableWay.class);
    Map<DurableWay, double[]> rates = new EnumMap<>(DurableWay.class);
    for (DurableWay way : ways) {
      ratios.put(way, new double[TURNS]);
      rates.put(way, new double[TURNS]);
    }
    for (int turn = 0; turn < TURNS; turn++) {
      Map<DurableWay, Double> took = new EnumMap<>(DurableWay.class);
      for (int i = 0; i < ways.length; i++) {
        DurableWay way = ways[(turn + i) % ways.length];
        took.put(way, measurement.seconds(way));
      }
      for (DurableWay way : ways) {
        rates.get(way)[turn] = DurableWay.readings() / took.get(way);
        ratios.get(way)[turn] = took.get(way) / took.get(DurableWay.RECORDER);
      }
    }
    for (DurableWay way : ways) {
      System.out.printf(
          Locale.ROOT,
          "%s, %s: %s readings/s; the recorder's rate over it %s%n",
          title,
          way.label(),
          spread(rates.get(way), "%.0f"),
          spread(ratios.get(way), "%.2f"));
    }
  }

  private static String spread(double[] values, String format) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    return String.format(
        Locale.ROOT,
        format + " (" + format + " to " + format + ")",
        median,
        sorted[0],
        sorted[sorted.length - 1]);
  }

  private static double inItsOwnProcess(DurableWay way) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                RecorderThroughput.class.getName(),
                way.name())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String lastLine = process.inputReader().lines().reduce("", (before, line) -> line);
    if (process.waitFor() != 0) {
      throw new IOException(way + " ended with " + process.exitValue());
    }
    return Double.parseDouble(lastLine);
  }

  private static double inThisProcess(DurableWay way)
      throws IOException, InterruptedException, SQLException {
    Path folder = Files.createTempDirectory("heatwake-bench");
    try {
      return way.seconds(folder);
    } finally {
      try (var files = Files.list(folder)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
      }
      Files.delete(folder);
    }
  }
}
