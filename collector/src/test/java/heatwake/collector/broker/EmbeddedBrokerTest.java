package heatwake.collector.broker;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.rig.SourceSpec;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The embedded broker with Mosquitto's client at one end and our source at the other. */
class EmbeddedBrokerTest {
  @TempDir private Path folder;

  @Test
  void carriesWhatAProbePublishes() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0));
        ProbeSource source =
            MqttSources.of(
                new SourceSpec.Mqtt(
                    "wifi", broker.url(), Optional.empty(), Optional.empty(), Optional.empty(), 3),
                List.of(Probes.topic(Channel.WATER_IN, "heron/in")),
                "Heron Lane",
                variable -> null)) {
      source.start(intake);
      List<Double> values = IntStream.range(0, 500).mapToObj(i -> 20 + i / 64.0).toList();
      Mosquitto.publishTo(
          folder, broker.port(), "heron/in", values.stream().map(String::valueOf).toList());
      Eventually.that("all readings", () -> intake.readings().size() >= values.size());
      assertThat(intake.values(Channel.WATER_IN)).containsExactlyElementsOf(values);
    }
  }
}
