package heatwake.bench;

import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * MQTT messages a second through source, recorder and store, each acknowledged only once it is on
 * disk, against a bare Paho subscriber that counts and does nothing; turn about, over a broker that
 * runs already.
 */
public final class MqttThroughput {
  private static final int MESSAGES = 40_000;
  private static final int REPEATS = 5;
  private static final int IN_FLIGHT = 1000;
  private static final int QOS = 1;

  /** Stamps of a probe whose clock is right. */
  private static final long FIRST_MS = System.currentTimeMillis() - TimeUnit.HOURS.toMillis(12);

  private static final String BARE_TOPIC = "heatwake/bench/bare";

  private MqttThroughput() {}

  /** Takes the broker's URL for Paho, such as {@code tcp://127.0.0.1:1883}. */
  public static void main(String[] arguments)
      throws IOException, InterruptedException, MqttException {
    String url = arguments[0];
    Path folder = Files.createTempDirectory("heatwake-bench");
    for (int i = 0; i < REPEATS; i++) {
      double bare = bare(url);
      // A topic of its own: the broker goes on keeping messages for the recorder of the last turn.
      double recorder = recorder(url, folder.resolve("mqtt-" + i + ".db"), "heatwake/bench/" + i);
      System.out.printf(
          "recorder %.0f/s, bare subscriber %.0f/s, ratio %.2f%n", recorder, bare, recorder / bare);
    }
    System.out.println("databases left in " + folder);
  }

  private static double bare(String url) throws InterruptedException, MqttException {
    CountDownLatch all = new CountDownLatch(MESSAGES);
    MqttAsyncClient subscriber = client(url);
    subscriber.subscribe(BARE_TOPIC, QOS, (topic, message) -> all.countDown()).waitForCompletion();
    long startNs = System.nanoTime();
    Thread sender = send(url, BARE_TOPIC);
    all.await();
    double perSecond = perSecond(startNs);
    sender.join();
    subscriber.disconnect().waitForCompletion();
    subscriber.close();
    return perSecond;
  }

  private static double recorder(String url, Path file, String topic)
      throws InterruptedException, MqttException {
    RigFile rig =
        RigReader.parse(
            """
            [[source]]
            name = "broker"
            mqtt = "%s"
            [[probe]]
            channel = "water-in"
            source = "broker"
            topic = "%s"
            field = "/value"
            time = "/at"
            unit = "Cel"
            """
                .formatted(url.replace("tcp://", "mqtt://"), topic),
            "rig.toml");
    try (Recorder recorder = Recorder.open(file, RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(rig);
      try (ProbeSource source = ProbeSources.of(rig).get(0)) {
        source.start(run);
        long startNs = System.nanoTime();
        Thread sender = send(url, topic);
        while (run.stored() < MESSAGES) {
          TimeUnit.MILLISECONDS.sleep(1);
        }
        double perSecond = perSecond(startNs);
        sender.join();
        if (stored(file) != MESSAGES) {
          throw new IllegalStateException(stored(file) + " of " + MESSAGES + " are stored");
        }
        return perSecond;
      }
    }
  }

  private static long stored(Path file) {
    try (Store store = Store.openExisting(file)) {
      return store.runs().stream().mapToLong(RunSummary::readings).sum();
    }
  }

  private static Thread send(String url, String topic) {
    Thread sender =
        new Thread(
            () -> {
              try {
                MqttAsyncClient client = client(url);
                for (int i = 0; i < MESSAGES; i++) {
                  while (client.getPendingDeliveryTokens().length >= IN_FLIGHT / 2) {
                    TimeUnit.MILLISECONDS.sleep(1);
                  }
                  client.publish(topic, payload(i), QOS, false);
                }
                client.disconnect().waitForCompletion();
                client.close();
              } catch (MqttException | InterruptedException e) {
                throw new IllegalStateException(e);
              }
            });
    sender.start();
    return sender;
  }

  private static byte[] payload(int i) {
    return ("{\"value\": " + (20 + i % 1000 / 100.0) + ", \"at\": " + (FIRST_MS + i * 1000L) + "}")
        .getBytes(StandardCharsets.UTF_8);
  }

  private static MqttAsyncClient client(String url) throws MqttException {
    MqttAsyncClient client =
        new MqttAsyncClient(url, MqttAsyncClient.generateClientId(), new MemoryPersistence());
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMaxInflight(IN_FLIGHT);
    client.connect(options).waitForCompletion();
    return client;
  }

  private static double perSecond(long startNs) {
    return MESSAGES / ((System.nanoTime() - startNs) / (double) TimeUnit.SECONDS.toNanos(1));
  }
}
