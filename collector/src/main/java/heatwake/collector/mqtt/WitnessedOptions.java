package heatwake.collector.mqtt;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;

/**
 * Options of an MQTT 5 client whose connection notes which messages are marked as duplicates, in
 * the order in which they come: the library (1.2.5) drops the mark on its way to the callback.
 */
final class WitnessedOptions extends MqttConnectionOptions implements PacketLimitStream.Witness {
  private final Queue<Boolean> marks = new ConcurrentLinkedQueue<>();

  @Override
  public void publish(boolean duplicate) {
    marks.add(duplicate);
  }

  /** Whether the next message is marked. */
  boolean nextIsDuplicate() {
    return Boolean.TRUE.equals(marks.poll());
  }
}
