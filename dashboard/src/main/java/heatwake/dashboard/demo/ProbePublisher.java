package heatwake.dashboard.demo;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.sensor.Reader;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.function.LongSupplier;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * The simulated site's Wi-Fi boxes: what their probes read goes to the broker as JSON with the
 * probes' own time stamp, at least once (quality of service 1).
 */
final class ProbePublisher implements Reader, AutoCloseable {
  /** Messages on the way to the broker at once. */
  private static final int WINDOW = 200;

  private final MqttAsyncClient client;
  private final DemoClock clock;
  private final LongSupplier stored;
  private final int ahead;
  private final ObjectMapper mapper = new ObjectMapper();
  private final Map<Node, ObjectNode> open = new EnumMap<>(Node.class);
  private final Semaphore window = new Semaphore(WINDOW);
  private long openMs = Long.MIN_VALUE;
  private long messages;
  private long readings;

  /**
   * Connects the boxes to a broker.
   *
   * @param clock moved on with every reading
   * @param stored how many readings have reached the disk
   * @param ahead how many readings may be on their way there at once: boxes of real nights have
   *     seconds between messages, and a recorder that its probes run away from would find them
   *     silent
   */
  ProbePublisher(String brokerUrl, DemoClock clock, LongSupplier stored, int ahead)
      throws MqttException {
    this.client =
        new MqttAsyncClient(
            brokerUrl.replaceFirst("^mqtt:", "tcp:"), "demo-boxes", new MemoryPersistence());
    this.clock = clock;
    this.stored = stored;
    this.ahead = ahead;
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMaxInflight(WINDOW + 1);
    client.connect(options).waitForCompletion();
  }

  @Override
  public void read(Tap tap, long timeMs, double value) {
    if (timeMs != openMs) {
      flush();
      openMs = timeMs;
    }
    open.computeIfAbsent(Node.of(tap), node -> mapper.createObjectNode().put("at", timeMs))
        .put(tap.channel(), value);
    readings++;
  }

  /** Sends what has been read and not sent yet. */
  void flush() {
    if (open.isEmpty()) {
      return;
    }
    clock.reach(openMs);
    try {
      for (Map.Entry<Node, ObjectNode> message : open.entrySet()) {
        publish(message.getKey().topic(), mapper.writeValueAsBytes(message.getValue()));
      }
      open.clear();
      while (readings - stored.getAsLong() > ahead) {
        Thread.sleep(1);
      }
    } catch (MqttException | IOException lost) {
      throw new IllegalStateException("a simulated box cannot reach the broker", lost);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the demo was stopped", stop);
    }
  }

  private void publish(String topic, byte[] payload) throws MqttException, InterruptedException {
    window.acquire();
    client.publish(
        topic,
        payload,
        1,
        false,
        null,
        new IMqttActionListener() {
          @Override
          public void onSuccess(IMqttToken token) {
            window.release();
          }

          @Override
          public void onFailure(IMqttToken token, Throwable fault) {
            // Comes up as readings that never reach the disk.
            window.release();
          }
        });
    messages++;
  }

  /** Messages sent so far. */
  long messages() {
    return messages;
  }

  /** Readings sent so far. */
  long readings() {
    return readings;
  }

  @Override
  public void close() throws MqttException {
    client.disconnect().waitForCompletion();
    client.close();
  }
}
