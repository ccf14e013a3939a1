package heatwake.bench;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.BufferedWriter;
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
 * Ways to put the same million readings durably into a new SQLite database: twelve channels, one
 * reading a second each.
 */
enum DurableWay {
  /** The recorder, from delivery to the last commit. */
  RECORDER("recorder") {
    @Override
    double seconds(Path folder) throws InterruptedException {
      Path file = folder.resolve("recorder.db");
      long startNs = System.nanoTime();
      try (Recorder recorder = Recorder.open(file, RecorderSettings.USUAL)) {
        RecordedRun run = recorder.begin(RIG);
        long firstMs = run.nowMs() - TimeUnit.SECONDS.toMillis(DELIVERIES);
        for (int i = 0; i < DELIVERIES; i++) {
          run.deliver(delivery(firstMs + TimeUnit.SECONDS.toMillis(i), value(i)));
        }
      }
      return since(startNs);
    }
  },

  /** A bare JDBC batch into a table of the same shape with as many commits. */
  BARE_BATCH("bare JDBC batch") {
    @Override
    double seconds(Path folder) throws SQLException {
      Path file = folder.resolve("bare.db");
      long startNs = System.nanoTime();
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
          Statement statement = connection.createStatement()) {
        statement.execute("PRAGMA journal_mode = WAL");
        statement.execute("PRAGMA synchronous = FULL");
        statement.execute(TABLE);
        connection.setAutoCommit(false);
        try (PreparedStatement insert =
            connection.prepareStatement("INSERT INTO reading (key, value) VALUES (?, ?)")) {
          int inBatch = 0;
          for (int i = 0; i < DELIVERIES; i++) {
            double value = value(i);
            for (int channel = 0; channel < CHANNELS.size(); channel++) {
              insert.setLong(1, key(i, channel));
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
      return since(startNs);
    }
  },

  /** The sqlite3 shell's {@code .import} of a finished text file, all in one commit. */
  SHELL_IMPORT("sqlite3 .import") {
    @Override
    double seconds(Path folder) throws IOException, InterruptedException {
      Path text = folder.resolve("readings.csv");
      writeText(text);
      Path file = folder.resolve("shell.db");
      long startNs = System.nanoTime();
      Process shell =
          new ProcessBuilder(
                  "sqlite3",
                  file.toString(),
                  "PRAGMA journal_mode = WAL",
                  "PRAGMA synchronous = FULL",
                  TABLE,
                  ".mode csv",
                  ".import '" + text + "' reading")
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      if (shell.waitFor() != 0) {
        throw new IOException("sqlite3 ended with " + shell.exitValue());
      }
      return since(startNs);
    }
  };

  private static final int DELIVERIES = 83_333;
  private static final int READINGS_PER_COMMIT = 20_000;
  private static final List<Channel> CHANNELS = Arrays.asList(Channel.values()).subList(0, 12);
  private static final String TABLE =
      "CREATE TABLE reading (key INTEGER PRIMARY KEY, value REAL NOT NULL)";
  private static final RigFile RIG = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  private final String label;

  DurableWay(String label) {
    this.label = label;
  }

  /** Seconds from the first call to the last byte synced, into a new database in this folder. */
  abstract double seconds(Path folder) throws IOException, InterruptedException, SQLException;

  /** What the output calls it. */
  String label() {
    return label;
  }

  /** How many readings each way stores. */
  static int readings() {
    return DELIVERIES * CHANNELS.size();
  }

  private static Delivery delivery(long timeMs, double value) {
    List<Reading> readings = new ArrayList<>(CHANNELS.size());
    for (Channel channel : CHANNELS) {
      readings.add(new Reading(channel, timeMs, value, true));
    }
    return Delivery.of(readings);
  }

  private static void writeText(Path file) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      for (int i = 0; i < DELIVERIES; i++) {
        for (int channel = 0; channel < CHANNELS.size(); channel++) {
          out.write(key(i, channel) + "," + value(i) + "\n");
        }
      }
    }
  }

  private static long key(int second, int channel) {
    return (1L << 42) | (TimeUnit.SECONDS.toMillis(second) << 6) | channel;
  }

  private static double value(int i) {
    return 20 + 3 * Math.sin(i);
  }

  private static double since(long startNs) {
    return (System.nanoTime() - startNs) / (double) TimeUnit.SECONDS.toNanos(1);
  }
}
