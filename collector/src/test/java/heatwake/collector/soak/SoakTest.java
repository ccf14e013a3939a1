package heatwake.collector.soak;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder process, a serial cable and a Mosquitto broker behind a network, with faults at
 * random, and a counter per channel on the sending side. A quarter of a minute in the everyday
 * build; for longer: {@code mvn -pl collector -am test -Dtest=SoakTest -Dheatwake.soak.seconds=3600
 * -Dsurefire.failIfNoSpecifiedTests=false}.
 *
 * <p>Owed are MQTT messages that the broker acknowledged to their sender, and serial lines sent
 * while nothing was wrong: a line has nobody who keeps it.
 */
class SoakTest {
  private static final long SECONDS = Long.getLong("heatwake.soak.seconds", 15);

  /** How long before a fault a serial reading must be sent to be owed: the commit and a margin. */
  private static final long COMMIT_MS = 2000;

  private static final long PAUSE_MS = 20;

  @TempDir private Path folder;

  private final long seed = Long.getLong("heatwake.soak.seed", System.nanoTime());
  private final Random random = new Random(seed);
  private final Tally serial = new Tally(Channel.WATER_IN);
  private final Tally mqtt3 = new Tally(Channel.WATER_OUT);
  private final Tally mqtt5 = new Tally(Channel.WATER_POOL);
  private final Map<String, Integer> faults = new TreeMap<>();
  private final List<long[]> serialSent = new ArrayList<>();
  private final List<long[]> troubles = new ArrayList<>();

  private final Object cableLock = new Object();
  private volatile boolean over;

  /** Before the recorder has subscribed for the first time the broker keeps nothing for it. */
  private volatile boolean subscribed;

  private volatile Exception failure;
  private Path database;
  private Path rig;
  private PtyPair cable;
  private Mosquitto broker;
  private RealProgram network;
  private int networkPort;
  private Process recorder;

  @Test
  @Timeout(24 * 3600)
  void nothingOwedIsLostDoubledOrAltered() throws Exception {
    database = folder.resolve("heatwake.db");
    try (PtyPair plugged = PtyPair.plugged(folder, "clips");
        Mosquitto mosquitto = Mosquitto.open(folder)) {
      cable = plugged;
      broker = mosquitto;
      networkPort = Mosquitto.freePort();
      plugNetwork();
      writeRig();
      startRecorder();
      List<Thread> senders =
          List.of(
              sender("serial", this::sendLines),
              sender("mqtt3", () -> publish("heron/out", mqtt3)),
              sender("mqtt5", () -> publish("heron/pool", mqtt5)));
      awaitAllHeard(0);
      subscribed = true;
      long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
      while (System.nanoTime() - endNs < 0 && failure == null) {
        Thread.sleep(COMMIT_MS + random.nextInt(1000));
        provoke();
      }
      Thread.sleep(COMMIT_MS);
      over = true;
      for (Thread one : senders) {
        one.join();
      }
      if (failure != null) {
        throw failure;
      }
      oweQuietLines();
      try {
        Eventually.that(
            "all that is owed", () -> count().stream().allMatch(one -> one.lost() == 0));
      } catch (AssertionError missing) {
        report();
        throw missing;
      }
      stop(false);
    } finally {
      network.killWithChildren();
      recorder.destroyForcibly();
    }
    report();
  }

  private void report() throws Exception {
    List<Tally> tallies = count();
    System.out.println("soak of " + SECONDS + " s, seed " + seed + ", faults " + faults);
    tallies.forEach(System.out::println);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
      assertThat(row.getString(1)).isEqualTo("ok");
    }
    for (Tally one : tallies) {
      assertThat(one.lost()).as("lost of " + one).isZero();
      assertThat(one.doubled()).as("doubled of " + one).isZero();
      assertThat(one.altered()).as("altered of " + one).isZero();
    }
  }

  private void writeRig() throws Exception {
    StringBuilder text = new StringBuilder("[site]\nname = \"Soak\"\n");
    text.append("[[source]]\nname = \"clips\"\nlines = \"json\"\nserial = \"")
        .append(cable.port())
        .append("\"\n");
    for (int version : new int[] {3, 5}) {
      text.append("[[source]]\nname = \"wifi").append(version).append("\"\nversion = ");
      text.append(version).append("\nmqtt = \"mqtt://127.0.0.1:").append(networkPort);
      text.append("\"\n");
    }
    probe(text, "water-in", "clips", "");
    probe(text, "water-out", "wifi3", "topic = \"heron/out\"\n");
    probe(text, "water-pool", "wifi5", "topic = \"heron/pool\"\n");
    rig = Files.writeString(folder.resolve("soak.toml"), text);
  }

  private static void probe(StringBuilder text, String channel, String source, String topic) {
    text.append("[[probe]]\nchannel = \"").append(channel).append("\"\nsource = \"");
    text.append(source).append("\"\n").append(topic);
    text.append("field = \"/v\"\ntime = \"/at\"\nunit = \"Cel\"\n");
  }

  // Sending.

  /** Something that sends until it is over. */
  private interface Sending {
    void run() throws Exception;
  }

  private Thread sender(String name, Sending sending) {
    Thread thread =
        new Thread(
            () -> {
              try {
                sending.run();
              } catch (Exception fault) {
                failure = fault;
              }
            },
            "sender-" + name);
    thread.start();
    return thread;
  }

  private static String message(int number) {
    return "{\"v\":" + Tally.value(number) + ",\"at\":" + Tally.timeMs(number) + "}";
  }

  private void sendLines() throws Exception {
    while (!over) {
      int number = serial.next();
      long nowMs = System.currentTimeMillis();
      try {
        synchronized (cableLock) {
          cable.send(message(number) + "\n");
        }
        synchronized (serialSent) {
          serialSent.add(new long[] {number, nowMs});
        }
      } catch (java.io.IOException pulled) {
        // Nobody is owed what could not be sent.
      }
      Thread.sleep(PAUSE_MS);
    }
  }

  /** Publishes as a careful probe does: again until the broker acknowledges, then the next. */
  private void publish(String topic, Tally tally) throws Exception {
    MqttClient client = null;
    while (!over) {
      int number = tally.next();
      boolean kept = subscribed;
      boolean acknowledged = false;
      while (!acknowledged && !over) {
        try {
          if (client == null || !client.isConnected()) {
            client = connected(topic);
          }
          client.publish(topic, message(number).getBytes(StandardCharsets.UTF_8), 1, false);
          acknowledged = true;
        } catch (MqttException gone) {
          Thread.sleep(100);
        }
      }
      if (acknowledged && kept) {
        tally.owe(number);
      }
      Thread.sleep(PAUSE_MS);
    }
    if (client != null && client.isConnected()) {
      client.disconnectForcibly(0, 100);
    }
  }

  private MqttClient connected(String topic) throws MqttException {
    MqttClient client =
        new MqttClient(
            "tcp://127.0.0.1:" + broker.port(), "probe-" + topic, new MemoryPersistence());
    client.setTimeToWait(5000);
    MqttConnectOptions options = new MqttConnectOptions();
    options.setConnectionTimeout(3);
    client.connect(options);
    return client;
  }

  // Faults.

  private void provoke() throws Exception {
    int fault = random.nextInt(9);
    long startMs = System.currentTimeMillis();
    String name =
        switch (fault) {
          case 0 -> {
            stop(true);
            startRecorder();
            yield "recorder killed";
          }
          case 1 -> {
            stop(false);
            Thread.sleep(random.nextInt(1000));
            startRecorder();
            yield "recorder stopped";
          }
          case 2 -> {
            pullCable();
            yield "cable pulled";
          }
          case 3 -> {
            network.killWithChildren();
            Thread.sleep(random.nextInt(3000));
            plugNetwork();
            yield "network cut";
          }
          case 4 -> {
            broker.close();
            Thread.sleep(random.nextInt(2000));
            broker.start();
            yield "broker restarted";
          }
          case 5 -> {
            lockDatabase();
            yield "database locked";
          }
          case 6 -> {
            noise();
            yield "noise on the line";
          }
          case 7 -> {
            broker.publish("heron/out", List.of("warm", "{\"v\":", message(0), message(0)));
            broker.publishFile("heron/pool", new byte[100_000]);
            yield "strange and repeated messages";
          }
          default -> {
            broker.publishFile("heron/out", new byte[1_000_000]);
            yield "a megabyte";
          }
        };
    faults.merge(name, 1, Integer::sum);
    awaitAllHeard(startMs);
    synchronized (serialSent) {
      troubles.add(new long[] {startMs, System.currentTimeMillis()});
    }
  }

  private void pullCable() throws Exception {
    synchronized (cableLock) {
      cable.unplug();
    }
    Thread.sleep(random.nextInt(2000));
    synchronized (cableLock) {
      cable.plug();
    }
  }

  private void lockDatabase() throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA busy_timeout = 10000");
      statement.execute("BEGIN IMMEDIATE");
      Thread.sleep(random.nextInt(4000));
      statement.execute("ROLLBACK");
    }
  }

  private void noise() throws Exception {
    byte[] noise = new byte[random.nextInt(20_000)];
    random.nextBytes(noise);
    synchronized (cableLock) {
      cable.send(noise);
      cable.send("\n{\"v\":1\n");
    }
  }

  private void plugNetwork() throws Exception {
    network =
        RealProgram.start(
            folder,
            "socat",
            "TCP-LISTEN:" + networkPort + ",bind=127.0.0.1,reuseaddr,fork",
            "TCP:127.0.0.1:" + broker.port());
  }

  private void startRecorder() throws Exception {
    recorder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                SoakedRecorder.class.getName(),
                rig.toString(),
                database.toString())
            .redirectErrorStream(true)
            .redirectOutput(
                ProcessBuilder.Redirect.appendTo(folder.resolve("recorder.log").toFile()))
            .start();
  }

  private void stop(boolean kill) throws Exception {
    if (kill) {
      recorder.destroyForcibly();
    } else {
      recorder.destroy();
    }
    recorder.waitFor();
  }

  // Counting.

  /** Waits until something that was sent after a moment has come from every sender. */
  private void awaitAllHeard(long sinceMs) throws Exception {
    int line = serial.last();
    int three = mqtt3.last();
    int five = mqtt5.last();
    Eventually.that(
        "all heard again since " + sinceMs,
        () -> {
          if (!recorder.isAlive()) {
            throw new IllegalStateException(Files.readString(folder.resolve("recorder.log")));
          }
          Map<Channel, Long> last = lastStored();
          return last.getOrDefault(serial.channel(), 0L) > Tally.timeMs(line)
              && last.getOrDefault(mqtt3.channel(), 0L) > Tally.timeMs(three)
              && last.getOrDefault(mqtt5.channel(), 0L) > Tally.timeMs(five);
        });
  }

  private Map<Channel, Long> lastStored() {
    Map<Channel, Long> last = new TreeMap<>();
    if (!Files.exists(database)) {
      return last;
    }
    try (Store store = Store.openExisting(database)) {
      List<RunSummary> runs = store.runs();
      for (RunSummary run : runs.subList(Math.max(0, runs.size() - 2), runs.size())) {
        store.forEachReading(
            run.id(), (channel, timeMs, value) -> last.merge(channel, timeMs, Math::max));
      }
    }
    return last;
  }

  /** Lines sent while all was well, and long enough before it was not. */
  private void oweQuietLines() {
    synchronized (serialSent) {
      for (long[] line : serialSent) {
        boolean quiet =
            troubles.stream().noneMatch(one -> line[1] > one[0] - COMMIT_MS && line[1] <= one[1]);
        if (quiet && line[1] >= troubles.stream().mapToLong(one -> one[1]).min().orElse(0)) {
          serial.owe((int) line[0]);
        }
      }
    }
  }

  private List<Tally> count() {
    Map<Channel, Tally> tallies = new TreeMap<>();
    for (Tally one : List.of(serial, mqtt3, mqtt5)) {
      one.recount();
      tallies.put(one.channel(), one);
    }
    try (Store store = Store.openExisting(database)) {
      for (RunSummary run : store.runs()) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> tallies.get(channel).found(run.id(), timeMs, value));
      }
    }
    return List.copyOf(tallies.values());
  }
}
