package heatwake.collector.source;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A flow meter that publishes once a second, with its own time stamps, and the rig that reads it.
 */
final class FlowByMqtt {
  private FlowByMqtt() {}

  /**
   * The rig of a source in a version of MQTT.
   *
   * @param more further lines of the probe
   */
  static RigFile rig(int version, int port, String more) {
    return RigReader.parse(
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "wifi"
        version = %d
        mqtt = "mqtt://127.0.0.1:%d"
        [[probe]]
        channel = "flow-heater"
        source = "wifi"
        topic = "heron/flow"
        field = "/rate"
        time = "/at"
        unit = "L/min"
        %s
        """
            .formatted(version, port, more),
        "heron.toml");
  }

  /** Its messages of some seconds after a first moment; each has another value. */
  static List<String> messages(long firstMs, int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "{\"rate\":" + (100 + i / 64.0) + ",\"at\":" + (firstMs + 1000L * i) + "}")
        .toList();
  }
}
