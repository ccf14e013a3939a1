package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder process with its own broker is stopped or killed again and again while real clients
 * publish to it: whatever it has acknowledged by then is in the database, and what it has not, the
 * clients send to the next one.
 */
@Timeout(300)
class EndedBrokerTest {
  private static final int ENDS = Integer.getInteger("heatwake.stops", 4);

  /** What a shell sees of a process ended by SIGKILL: 128 and the signal's number. */
  private static final int KILLED = 128 + 9;

  private static final int MOST_IN_FLIGHT = 8;

  @TempDir Path folder;
  private final Random random = new Random();
  private final long firstMs = System.currentTimeMillis() - TimeUnit.HOURS.toMillis(12);
  private volatile boolean over;

  private Path database() {
    return folder.resolve("h.db");
  }

  /** A probe with messages numbered from 0. */
  private final class Publisher implements AutoCloseable {
    private final MqttAsyncClient client;
    private final Set<Integer> acknowledged = new ConcurrentSkipListSet<>();
    private final Thread thread;
    private volatile int sent;

    private Publisher(int port, String topic, int quality, IntFunction<String> message)
        throws MqttException {
      client =
          new MqttAsyncClient("tcp://127.0.0.1:" + port, "box-" + topic, new MemoryPersistence());
      MqttConnectOptions options = new MqttConnectOptions();
      options.setCleanSession(false);
      options.setMaxInflight(100);
      thread =
          new Thread(
              () -> {
                try {
                  while (!over) {
                    if (!client.isConnected()) {
                      connect(options);
                    } else if (client.getPendingDeliveryTokens().length < MOST_IN_FLIGHT) {
                      publish(topic, quality, message);
                    }
                    Thread.sleep(5);
                  }
                } catch (InterruptedException e) {
                  Thread.currentThread().interrupt();
                }
              });
      thread.start();
    }

    private void connect(MqttConnectOptions options) throws InterruptedException {
      try {
        client.connect(options).waitForCompletion(5000);
      } catch (MqttException notThere) {
        Thread.sleep(100);
      }
    }

    private void publish(String topic, int quality, IntFunction<String> message) {
      int number = sent;
      try {
        client.publish(
            topic,
            message.apply(number).getBytes(StandardCharsets.UTF_8),
            quality,
            false,
            null,
            new IMqttActionListener() {
              @Override
              public void onSuccess(IMqttToken token) {
                acknowledged.add(number);
              }

              @Override
              public void onFailure(IMqttToken token, Throwable fault) {
                // The library sends it again once it is connected.
              }
            });
        sent = number + 1;
      } catch (MqttException justGone) {
        // The next turn connects, and this message has not been sent.
      }
    }

    @Override
    public void close() throws MqttException {
      over = true;
      try {
        thread.join();
      } catch (InterruptedException hurry) {
        Thread.currentThread().interrupt();
      }
      client.disconnectForcibly(0, 100);
      client.close(true);
    }
  }

  private Process recorder(Path rig, int port, int life) throws Exception {
    Path log = folder.resolve("log-" + life);
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "record",
                rig.toString(),
                "--broker=" + port,
                "--db",
                database().toString())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    while (!Files.readString(log).contains("recording run")) {
      assertThat(process.isAlive()).as(Files.readString(log)).isTrue();
      Thread.sleep(20);
    }
    return process;
  }

  private List<Integer> stored(Channel wanted, double first, double perStep) {
    List<Integer> numbers = new ArrayList<>();
    try (Store store = Store.openExisting(database())) {
      for (RunSummary run : store.runs()) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> {
              if (channel == wanted) {
                numbers.add((int) Math.round((value - first) / perStep));
              }
            });
      }
    }
    numbers.sort(null);
    return numbers;
  }

  private List<Integer> flows() {
    return stored(Channel.FLOW_HEATER, 100, 1 / 64.0);
  }

  private List<Integer> powers() {
    return stored(Channel.POWER, 1000, 1);
  }

  private List<Integer> voltages() {
    return stored(Channel.VOLTAGE, 200, 1 / 64.0);
  }

  @Test
  void whatWasAcknowledgedIsStoredWhenItIsStopped() throws Exception {
    assertThatAllIsStored(Process::destroy, Main.DONE);
  }

  @Test
  void whatWasAcknowledgedIsStoredWhenItIsKilled() throws Exception {
    assertThatAllIsStored(Process::destroyForcibly, KILLED);
  }

  private void assertThatAllIsStored(Consumer<Process> end, int exit) throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    Path rig =
        Files.writeString(
            folder.resolve("rig.toml"),
            """
            [site]
            name = "Heron Lane"
            [[source]]
            name = "wifi"
            mqtt = "mqtt://127.0.0.1:%d"
            [[probe]]
            channel = "flow-heater"
            source = "wifi"
            topic = "heron/flow"
            field = "/rate"
            time = "/at"
            unit = "L/min"
            [[probe]]
            channel = "power"
            source = "wifi"
            topic = "heron/+"
            field = "/power"
            unit = "W"
            [[probe]]
            channel = "voltage"
            source = "wifi"
            topic = "heron/volts"
            field = "/volts"
            time = "/at"
            unit = "V"
            """
                .formatted(port));
    try (Publisher flow =
            new Publisher(
                port,
                "heron/flow",
                1,
                i -> "{\"rate\":" + (100 + i / 64.0) + ",\"at\":" + (firstMs + 1000L * i) + "}");
        Publisher power =
            new Publisher(port, "heron/power", 1, i -> "{\"power\":" + (1000 + i) + "}");
        Publisher volts =
            new Publisher(
                port,
                "heron/volts",
                2,
                i -> "{\"volts\":" + (200 + i / 64.0) + ",\"at\":" + (firstMs + 1000L * i) + "}")) {
      for (int life = 0; life < ENDS; life++) {
        int before = flow.acknowledged.size();
        Process process = recorder(rig, port, life);
        while (flow.acknowledged.size() < before + 20) {
          Thread.sleep(10);
        }
        Thread.sleep(random.nextInt(1500));
        end.accept(process);
        assertThat(process.waitFor()).isEqualTo(exit);
        assertThat(flows()).containsAll(flow.acknowledged);
        assertThat(powers()).containsAll(power.acknowledged);
        assertThat(voltages()).containsAll(volts.acknowledged);
      }
      Process process = recorder(rig, port, ENDS);
      over = true;
      while (flow.acknowledged.size() < flow.sent
          || power.acknowledged.size() < power.sent
          || volts.acknowledged.size() < volts.sent) {
        if (!flow.client.isConnected()) {
          flow.connect(resumed());
        }
        if (!power.client.isConnected()) {
          power.connect(resumed());
        }
        if (!volts.client.isConnected()) {
          volts.connect(resumed());
        }
        Thread.sleep(20);
      }
      process.destroy();
      assertThat(process.waitFor()).isEqualTo(Main.DONE);
      assertThat(flows()).containsExactlyElementsOf(numbers(flow.sent));
      assertThat(voltages()).containsExactlyElementsOf(numbers(volts.sent));
      // Without a time of their own: known by what was stored with them.
      assertThat(powers()).containsExactlyElementsOf(numbers(power.sent));
      System.out.println(
          ENDS
              + " ends with "
              + exit
              + ", "
              + (flow.sent + power.sent + volts.sent)
              + " messages, each stored once");
    }
  }

  private static MqttConnectOptions resumed() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setCleanSession(false);
    return options;
  }

  private static List<Integer> numbers(int until) {
    return IntStream.range(0, until).boxed().toList();
  }
}
