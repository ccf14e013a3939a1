package heatwake.bench;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Durable readings a second through the recorder, against a bare JDBC batch into a table of the
 * same shape with the same commits, turn about in one run; then a thousand sites at one reading a
 * second.
 */
public final class RecorderThroughput {
  private static final int DELIVERIES = 83_333;
  private static final int REPEATS = 3;
  private static final int READINGS_PER_COMMIT = 20_000;
  private static final int SITES = 1000;
  private static final int SECONDS = 30;
  private static final List<Channel> CHANNELS = Arrays.asList(Channel.values()).subList(0, 12);
  private static final RigFile RIG = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  private RecorderThroughput() {}

  public static void main(String[] arguments)
      throws IOException, InterruptedException, SQLException {
    Path folder = Files.createTempDirectory("heatwake-bench");
    for (int i = 0; i < REPEATS; i++) {
      double recorder = throughRecorder(folder.resolve("recorder-" + i + ".db"));
      double bare = throughJdbc(folder.resolve("bare-" + i + ".db"));
      System.out.printf(
          "recorder %.0f/s, bare JDBC %.0f/s, ratio %.2f%n", recorder, bare, recorder / bare);
    }
    manySites(folder.resolve("sites.db"));
    System.out.println("databases left in " + folder);
  }

  private static double throughRecorder(Path file) throws InterruptedException {
    long startNs = System.nanoTime();
    try (Recorder recorder = Recorder.open(file, RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      long firstMs = run.nowMs() - TimeUnit.SECONDS.toMillis(DELIVERIES);
      for (int i = 0; i < DELIVERIES; i++) {
        run.deliver(delivery(firstMs + TimeUnit.SECONDS.toMillis(i), value(i), true));
      }
    }
    return perSecond(startNs);
  }

  private static Delivery delivery(long timeMs, double value, boolean stampedByProbe) {
    List<Reading> readings = new ArrayList<>(CHANNELS.size());
    for (Channel channel : CHANNELS) {
      readings.add(new Reading(channel, timeMs, value, stampedByProbe));
    }
    return Delivery.of(readings);
  }

  private static double value(int i) {
    return 20 + 3 * Math.sin(i);
  }

  private static double throughJdbc(Path file) throws SQLException {
    long startNs = System.nanoTime();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = WAL");
      statement.execute("PRAGMA synchronous = FULL");
      statement.execute("CREATE TABLE reading (key INTEGER PRIMARY KEY, value REAL NOT NULL)");
      connection.setAutoCommit(false);
      try (PreparedStatement insert =
          connection.prepareStatement("INSERT INTO reading (key, value) VALUES (?, ?)")) {
        int inBatch = 0;
        for (int i = 0; i < DELIVERIES; i++) {
          double value = value(i);
          for (int channel = 0; channel < CHANNELS.size(); channel++) {
            insert.setLong(1, (1L << 42) | (TimeUnit.SECONDS.toMillis(i) << 6) | channel);
            insert.setDouble(2, value);
            insert.addBatch();
            inBatch++;
          }
          if (inBatch >= READINGS_PER_COMMIT) {
            insert.executeBatch();
            connection.commit();
            inBatch = 0;
          }
        }
        insert.executeBatch();
        connection.commit();
      }
    }
    return perSecond(startNs);
  }

  private static double perSecond(long startNs) {
    double tookS = (System.nanoTime() - startNs) / (double) TimeUnit.SECONDS.toNanos(1);
    return DELIVERIES * CHANNELS.size() / tookS;
  }

  private static void manySites(Path file) throws InterruptedException {
    try (Recorder recorder = Recorder.open(file, RecorderSettings.USUAL)) {
      List<RecordedRun> runs = new ArrayList<>();
      for (int i = 0; i < SITES; i++) {
        runs.add(recorder.begin(RIG));
      }
      long startNs = System.nanoTime();
      int mostWaiting = 0;
      int late = 0;
      for (int second = 1; second <= SECONDS; second++) {
        for (RecordedRun run : runs) {
          run.deliver(delivery(run.nowMs(), value(second), false));
        }
        mostWaiting = Math.max(mostWaiting, recorder.waiting());
        long leftNs = startNs + TimeUnit.SECONDS.toNanos(second) - System.nanoTime();
        if (leftNs > 0) {
          TimeUnit.NANOSECONDS.sleep(leftNs);
        } else {
          late++;
        }
      }
      System.out.printf(
          "%d sites: most readings waiting %d, at the end %d, late in %d of %d seconds%n",
          SITES, mostWaiting, recorder.waiting(), late, SECONDS);
    }
  }
}
