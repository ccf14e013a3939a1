package heatwake.collector.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a real Mosquitto broker and its client. */
class MqttSourceTest {
  @TempDir private Path folder;

  private final RememberingIntake intake = new RememberingIntake();

  private static ProbeSource source(String url, ProbeSpec... probes) {
    return MqttSources.of(
        new SourceSpec.Mqtt("wifi", url, Optional.empty(), Optional.empty(), Optional.empty(), 3),
        List.of(probes),
        "Heron Lane",
        variable -> null);
  }

  @Test
  void storesBareNumbersAndJsonWithItsOwnTime() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source =
            source(
                broker.url(),
                Probes.topic(Channel.WATER_IN, "heron/+/in"),
                Probes.topic(Channel.FLOW_HEATER, "heron/flow", "/rate", "/at"))) {
      source.start(intake);
      broker.publish("heron/unit1/in", List.of("27.5", "27.625"));
      broker.publish(
          "heron/flow",
          List.of(
              "{\"rate\":141.5,\"at\":\"2031-05-04T18:00:00Z\"}",
              "{\"rate\":142.25,\"at\":1935684001000}"));
      Eventually.that("four readings", () -> intake.readings().size() == 4);
      assertThat(intake.values(Channel.WATER_IN)).containsExactly(27.5, 27.625);
      assertThat(intake.readings().stream().filter(Reading::stampedByProbe))
          .containsExactly(
              new Reading(Channel.FLOW_HEATER, 1935684000000L, 141.5, true),
              new Reading(Channel.FLOW_HEATER, 1935684001000L, 142.25, true));
      assertThat(intake.happened()).isEmpty();
    }
  }

  @Test
  void whatIsPublishedWhileTheRecorderIsAwayArrives() throws Exception {
    ProbeSpec probe = Probes.topic(Channel.FLOW_HEATER, "heron/flow", "/rate", "/at");
    try (Mosquitto broker = Mosquitto.open(folder)) {
      try (ProbeSource source = source(broker.url(), probe)) {
        source.start(intake);
        broker.publish("heron/flow", sent(0, 10));
        Eventually.that("ten readings", () -> intake.readings().size() == 10);
      }
      broker.publish("heron/flow", sent(10, 500));
      try (ProbeSource source = source(broker.url(), probe)) {
        source.start(intake);
        Eventually.that("all readings", () -> intake.readings().size() >= 500);
      }
      assertThat(intake.values(Channel.FLOW_HEATER))
          .containsExactlyElementsOf(IntStream.range(0, 500).mapToObj(i -> 100.0 + i).toList());
    }
  }

  @Test
  void whatWasNotDurableComesAgainAndIsStoredOnce() throws Exception {
    int network = Mosquitto.freePort();
    try (Mosquitto broker = Mosquitto.open(folder)) {
      String[] cable = {
        "TCP-LISTEN:" + network + ",bind=127.0.0.1,reuseaddr,fork", "TCP:127.0.0.1:" + broker.port()
      };
      RealProgram first = RealProgram.start(folder, "socat", cable);
      try (ProbeSource source =
          source("mqtt://127.0.0.1:" + network, Probes.topic(Channel.WATER_IN, "heron/in"))) {
        source.start(intake);
        Eventually.that("connected", () -> intake.lasting().isEmpty());
        intake.holdBack();
        broker.publish("heron/in", List.of("20.5", "21.5", "22.5"));
        Eventually.that("three readings", () -> intake.readings().size() == 3);
        first.killWithChildren();
        Eventually.that("noticed", () -> !intake.lasting().isEmpty());
        try (RealProgram second = RealProgram.start(folder, "socat", cable)) {
          Eventually.that("delivered again", () -> count(broker.log(), "(d1, q1") == 3);
          assertThat(second.isRunning()).isTrue();
          intake.commit();
          Eventually.that("acknowledged", () -> count(broker.log(), "Received PUBACK") == 3);
        }
        assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.5, 21.5, 22.5);
      }
    }
  }

  private static long count(String log, String text) {
    return log.lines().filter(line -> line.contains(text)).count();
  }

  @Test
  void brokerThatIsNotThereIsSaidOnceAndTriedAgain() throws Exception {
    int port = Mosquitto.freePort();
    try (ProbeSource source =
        source("mqtt://127.0.0.1:" + port, Probes.topic(Channel.WATER_IN, "heron/in"))) {
      source.start(intake);
      assertThat(intake.begun())
          .containsExactly("SOURCE_LOST wifi: mqtt://127.0.0.1:" + port + ": nobody listens there");
    }
  }

  private static List<String> sent(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "{\"rate\":" + (100 + i) + ",\"at\":" + (1935684000000L + 1000L * i) + "}")
        .toList();
  }
}
