package heatwake.bench;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** The whole analysis of a night beside a bare JDBC scan of the same rows, in one process. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class NightBenchmark {
  private static final long START_MS = 1_935_684_000_000L;
  private static final int BATCH_S = 3600;
  private static final int CYCLE_S = 3 * 3600;
  private static final int REST_S = 1200;

  private static final List<Channel> CHANNELS =
      List.of(
          Channel.WATER_IN,
          Channel.WATER_OUT,
          Channel.FLOW_HEATER,
          Channel.POWER,
          Channel.PRESSURE_DISCHARGE,
          Channel.PRESSURE_SUCTION,
          Channel.TEMP_SUCTION,
          Channel.TEMP_LIQUID,
          Channel.AIR_IN,
          Channel.AIR_AMBIENT,
          Channel.FLOW_TOTAL,
          Channel.WATER_POOL);

  private static final String RIG =
      """
      [site]
      name = "bench"
      [pool]
      volume = "60 m3"
      setpoint = "30 Cel"
      [heater]
      refrigerant = "R-410A"
      flow-min = "90 L/min"
      flow-max = "200 L/min"
      [[heater.rating]]
      air = "27 Cel"
      water = "27 Cel"
      heat = "16.5 kW"
      power = "2.75 kW"
      """;

  /** Length of the run. */
  @Param({"7", "14", "28"})
  public int hours;

  /** Channels at one reading a second. */
  @Param({"6", "12"})
  public int channels;

  private Path folder;
  private Store store;
  private Connection connection;
  private Recording recording;
  private long run;

  /** Records the night, then opens it both ways. */
  @Setup(Level.Trial)
  public void record() throws IOException, SQLException {
    folder = Files.createTempDirectory("heatwake-night");
    Path file = folder.resolve("night.db");
    RigFile rig = RigReader.parse(RIG, "rig.toml");
    store = Store.open(file);
    run = store.beginRun(rig, START_MS);
    Random random = new Random(7);
    for (int from = 0; from < hours * 3600; from += BATCH_S) {
      List<Reading> readings = new ArrayList<>();
      for (int s = from; s < from + BATCH_S; s++) {
        for (Channel channel : CHANNELS.subList(0, channels)) {
          readings.add(new Reading(channel, START_MS + s * 1000L, value(channel, s, random), true));
        }
      }
      store.append(run, readings);
    }
    store.endRun(run, START_MS + hours * 3_600_000L);
    recording = store.load(run);
    connection = DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private static double value(Channel channel, int s, Random random) {
    int inCycle = s % CYCLE_S;
    double load = inCycle < REST_S ? 0 : 1 - Math.exp((REST_S - inCycle) / 60.0);
    double pool = 26 + s / 40_000.0;
    double exact =
        switch (channel) {
          case WATER_IN, WATER_POOL -> pool;
          case WATER_OUT -> pool + 1.9 * load;
          case FLOW_HEATER -> 118;
          case FLOW_TOTAL -> 190;
          case POWER -> load > 0 ? 2700 : 14;
          case PRESSURE_DISCHARGE -> 1500 + 800 * load;
          case PRESSURE_SUCTION -> 1450 - 500 * load;
          case TEMP_SUCTION -> 20 - 7 * load;
          case TEMP_LIQUID -> 22 + 12 * load;
          default -> 22 - s / 20_000.0;
        };
    return exact * (1 + 0.001 * random.nextGaussian());
  }

  /** Closes both and leaves nothing behind. */
  @TearDown(Level.Trial)
  public void close() throws SQLException, IOException {
    connection.close();
    store.close();
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }

  /** Everything from readings to findings. */
  @Benchmark
  public Findings analysis() {
    return Analysis.of(recording);
  }

  /** Loading the run from the store. */
  @Benchmark
  public Recording load() {
    return store.load(run);
  }

  /** Reading the same rows and doing nothing with them but adding up. */
  @Benchmark
  public double bareScan() throws SQLException {
    double sum = 0;
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT key, value FROM reading ORDER BY key")) {
      while (rows.next()) {
        sum += rows.getLong(1) + rows.getDouble(2);
      }
    }
    return sum;
  }
}
