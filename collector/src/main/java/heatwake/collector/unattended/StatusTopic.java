package heatwake.collector.unattended;

import heatwake.collector.mqtt.RetainedTopic;
import java.io.IOException;

/** The status on an MQTT topic, retained; the last will says that the recorder is gone. */
public final class StatusTopic implements StatusOutlet {
  /** What the broker says for us when we vanish. */
  public static final String LAST_WILL = "{\"state\":\"lost\"}";

  private final RetainedTopic topic;

  public StatusTopic(RetainedTopic topic) {
    this.topic = topic;
  }

  @Override
  public void put(String json) throws IOException {
    topic.put(json);
  }

  @Override
  public void close() {
    try {
      topic.put(STOPPED);
    } catch (IOException e) {
      // The broker is gone; its last will for us says as much.
      return;
    } finally {
      topic.close();
    }
  }
}
