package heatwake.collector.soak;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** The probes: one sends lines, three publish, as fast as they are told to. */
final class Senders implements AutoCloseable {
  private static final long PAUSE_MS = 20;

  private final SoakedSite site;
  private final List<Thread> threads = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private volatile boolean over;

  /** Before the recorder has subscribed for the first time the broker keeps nothing for it. */
  private volatile boolean subscribed;

  private volatile Exception failure;

  /** A line that was sent. */
  record Line(int number, long sentMs) {}

  /** Something that sends until it is over. */
  private interface Sending {
    void run() throws Exception;
  }

  Senders(SoakedSite site) {
    this.site = site;
    start("serial", this::sendLines);
    start("mqtt3", () -> publish(site.broker().port(), "heron/out", site.mqtt3()));
    start("mqtt5", () -> publish(site.broker().port(), "heron/pool", site.mqtt5()));
    start("inside", () -> publish(site.insidePort(), "heron/return", site.inside()));
  }

  private void start(String name, Sending sending) {
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
    threads.add(thread);
    thread.start();
  }

  /** From now on the recorder is owed what the broker acknowledges. */
  void recorderHasSubscribed() {
    subscribed = true;
  }

  /** Whether one of them failed; then the soak is worth nothing. */
  boolean haveFailed() {
    return failure != null;
  }

  /** Waits until they have ended, and tells of a failure. */
  void end() throws Exception {
    close();
    for (Thread one : threads) {
      one.join();
    }
    if (failure != null) {
      throw failure;
    }
  }

  /** Lets them end however the soak went: one that goes on sending keeps the tests from ending. */
  @Override
  public void close() {
    over = true;
  }

  /** Lines that could be sent. */
  List<Line> lines() {
    synchronized (lines) {
      return List.copyOf(lines);
    }
  }

  private void sendLines() throws Exception {
    while (!over) {
      int number = site.serial().next();
      long nowMs = System.currentTimeMillis();
      try {
        site.line().send(site.serial().message(number) + "\n");
        synchronized (lines) {
          lines.add(new Line(number, nowMs));
        }
      } catch (IOException pulled) {
        // Nobody is owed what could not be sent.
      }
      Thread.sleep(PAUSE_MS);
    }
  }

  /** Publishes as a careful probe does: again until the broker acknowledges, then the next. */
  private void publish(int port, String topic, Tally tally) throws Exception {
    MqttClient client = null;
    while (!over) {
      int number = tally.next();
      boolean kept = subscribed;
      boolean acknowledged = false;
      while (!acknowledged && !over) {
        try {
          if (client == null || !client.isConnected()) {
            client = connected(port, topic);
          }
          client.publish(topic, tally.message(number).getBytes(StandardCharsets.UTF_8), 1, false);
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

  private static MqttClient connected(int port, String topic) throws MqttException {
    MqttClient client =
        new MqttClient("tcp://127.0.0.1:" + port, "probe-" + topic, new MemoryPersistence());
    client.setTimeToWait(5000);
    MqttConnectOptions options = new MqttConnectOptions();
    options.setConnectionTimeout(3);
    client.connect(options);
    return client;
  }
}
