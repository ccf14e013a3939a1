package heatwake.collector.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against a real Mosquitto broker and its client. */
class MqttSourceTest {
  @TempDir private Path folder;

  private final RememberingIntake intake = new RememberingIntake();

  private static ProbeSource source(int version, String url, ProbeSpec... probes) {
    return MqttSources.of(
        new SourceSpec.Mqtt(
            "wifi", url, Optional.empty(), Optional.empty(), Optional.empty(), version),
        List.of(probes),
        "Heron Lane",
        variable -> null);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void storesBareNumbersAndJsonWithItsOwnTime(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source =
            source(
                version,
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

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void wildcardStandsForAllBelowIt(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source =
            source(version, broker.url(), Probes.topic(Channel.AIR_IN, "heron/air/#"))) {
      source.start(intake);
      broker.publish("heron/air", List.of("19.5"));
      broker.publish("heron/air/in/left", List.of("20.5"));
      broker.publish("heron/airs", List.of("99"));
      broker.publish("heron/air/in", List.of("21.5"));
      Eventually.that("three readings", () -> intake.readings().size() == 3);
      assertThat(intake.values(Channel.AIR_IN)).containsExactly(19.5, 20.5, 21.5);
      assertThat(intake.happened()).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whatIsPublishedWhileTheRecorderIsAwayArrives(int version) throws Exception {
    ProbeSpec probe = Probes.topic(Channel.FLOW_HEATER, "heron/flow", "/rate", "/at");
    try (Mosquitto broker = Mosquitto.open(folder)) {
      try (ProbeSource source = source(version, broker.url(), probe)) {
        source.start(intake);
        broker.publish("heron/flow", sent(0, 10));
        Eventually.that("ten readings", () -> intake.readings().size() == 10);
      }
      broker.publish("heron/flow", sent(10, 500));
      try (ProbeSource source = source(version, broker.url(), probe)) {
        source.start(intake);
        Eventually.that("all readings", () -> intake.readings().size() >= 500);
      }
      assertThat(intake.values(Channel.FLOW_HEATER))
          .containsExactlyElementsOf(IntStream.range(0, 500).mapToObj(i -> 100.0 + i).toList());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whatWasNotDurableComesAgainAndIsStoredOnce(int version) throws Exception {
    int network = Mosquitto.freePort();
    try (Mosquitto broker = Mosquitto.open(folder)) {
      String[] cable = {
        "TCP-LISTEN:" + network + ",bind=127.0.0.1,reuseaddr,fork", "TCP:127.0.0.1:" + broker.port()
      };
      RealProgram first = RealProgram.start(folder, "socat", cable);
      try (ProbeSource source =
          source(
              version, "mqtt://127.0.0.1:" + network, Probes.topic(Channel.WATER_IN, "heron/in"))) {
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
        source(3, "mqtt://127.0.0.1:" + port, Probes.topic(Channel.WATER_IN, "heron/in"))) {
      source.start(intake);
      assertThat(intake.begun())
          .containsExactly("SOURCE_LOST wifi: mqtt://127.0.0.1:" + port + ": nobody listens there");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void whatCannotBeReadIsCountedAndAcknowledgedAndTheGoodGoesOn(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source =
            source(
                version,
                broker.url(),
                Probes.topic(Channel.WATER_IN, "heron/in"),
                Probes.topic(Channel.FLOW_HEATER, "heron/flow", "/rate", ""))) {
      source.start(intake);
      broker.publish("heron/in", List.of("warm", "{}", "", "nan", "20,5", "\u001b[31m"));
      broker.publishFile("heron/in", new byte[] {(byte) 0xFF, (byte) 0xFE, 0});
      broker.publishFile("heron/in", "7".repeat(100_000).getBytes(StandardCharsets.UTF_8));
      broker.publish("heron/flow", List.of("{\"rat\":1}", "{\"rate\":{}}", "{\"rate\":141.5"));
      broker.publish("heron/in", List.of("20.5"));
      Eventually.that("the good one", () -> intake.values(Channel.WATER_IN).contains(20.5));
      Eventually.that(
          "all acknowledged",
          () ->
              count(broker.log(), "Received PUBACK from heatwake")
                  == count(broker.log(), "Sending PUBLISH to heatwake"));
      assertThat(intake.readings()).hasSize(1);
      assertThat(intake.happened())
          .contains(
              "UNREADABLE water-in: \"warm\" is not a number",
              "UNREADABLE water-in: \"20,5\" is not a number",
              "UNREADABLE water-in: \"·[31m\" is not a number",
              "SENSOR_FAULT water-in: the probe sent \"nan\"",
              "UNREADABLE wifi: message on \"heron/in\" is not UTF-8 text: \"···\"",
              "UNREADABLE wifi: message on \"heron/flow\" holds no /rate: \"{\"rat\":1}\"")
          .anyMatch(text -> text.contains("\"heron/in\" is longer than 64 kB: \"7777"))
          .allMatch(text -> text.length() < 200);
      assertThat(intake.begun()).isEmpty();
    }
  }

  @Test
  void megabyteIsCutShortCountedAndAcknowledged() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source = source(3, broker.url(), Probes.topic(Channel.WATER_IN, "heron/in"))) {
      source.start(intake);
      broker.publishFile("heron/in", new byte[5_000_000]);
      broker.publish("heron/in", List.of("20.5"));
      Eventually.that("the good one", () -> intake.values(Channel.WATER_IN).contains(20.5));
      assertThat(intake.happened())
          .singleElement()
          .asString()
          .startsWith("UNREADABLE wifi: message on \"heron/in\" is longer than 64 kB");
      assertThat(intake.begun()).isEmpty();
    }
  }

  @Test
  void megabyteIsNotEvenSentByABrokerThatWasToldTheLimit() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source = source(5, broker.url(), Probes.topic(Channel.WATER_IN, "heron/in"))) {
      source.start(intake);
      broker.publishFile("heron/in", new byte[1_000_000]);
      broker.publish("heron/in", List.of("20.5"));
      Eventually.that("the good one", () -> intake.values(Channel.WATER_IN).contains(20.5));
      assertThat(intake.readings()).hasSize(1);
      assertThat(intake.begun()).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void retainedMessageCountsOnlyWithATimeOfItsOwn(int version) throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        ProbeSource source =
            source(
                version,
                broker.url(),
                Probes.topic(Channel.WATER_IN, "heron/in"),
                Probes.topic(Channel.FLOW_HEATER, "heron/flow", "/rate", "/at"))) {
      broker.publish("heron/in", List.of("19.5"), "-r");
      broker.publish("heron/flow", List.of("{\"rate\":140,\"at\":1935684000000}"), "-r");
      source.start(intake);
      Eventually.that("the stamped one", () -> !intake.readings().isEmpty());
      Eventually.that("the other told of", () -> !intake.happened().isEmpty());
      assertThat(intake.readings())
          .containsExactly(new Reading(Channel.FLOW_HEATER, 1935684000000L, 140, true));
      assertThat(intake.happened().get(0)).startsWith("TIME_REFUSED water-in: a retained message");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void passwordComesFromTheEnvironmentAndAWrongOneIsSaid(int version) throws Exception {
    Path users = folder.resolve("users");
    RealProgram.run(folder, "mosquitto_passwd", "-c", "-b", users.toString(), "logger", "s3cret");
    try (Mosquitto broker =
        Mosquitto.with(folder, "allow_anonymous false", "password_file " + users)) {
      try (ProbeSource wrong = withPassword(version, broker.url(), Optional.empty(), "guess")) {
        wrong.start(intake);
        assertThat(intake.begun())
            .containsExactly(
                "SOURCE_LOST wifi: "
                    + broker.url()
                    + " refused user \"logger\": not authorised; check user and password");
      }
      RememberingIntake second = new RememberingIntake();
      try (ProbeSource right = withPassword(version, broker.url(), Optional.empty(), "s3cret")) {
        right.start(second);
        broker.publish("heron/in", List.of("20.5"), "-u", "logger", "-P", "s3cret");
        Eventually.that("a reading", () -> !second.readings().isEmpty());
      }
    }
  }

  private static ProbeSource withPassword(
      int version, String url, Optional<String> ca, String password) {
    return MqttSources.of(
        new SourceSpec.Mqtt(
            "wifi", url, Optional.of("logger"), Optional.of("HERON_PASSWORD"), ca, version),
        List.of(Probes.topic(Channel.WATER_IN, "heron/in")),
        "Heron Lane",
        Map.of("HERON_PASSWORD", password)::get);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void encryptedWithAnAuthorityOfOnesOwn(int version) throws Exception {
    certify();
    try (Mosquitto broker =
        Mosquitto.with(
            folder,
            "allow_anonymous true",
            "cafile " + folder.resolve("ca.pem"),
            "certfile " + folder.resolve("server.pem"),
            "keyfile " + folder.resolve("server.key"))) {
      String url = "mqtts://127.0.0.1:" + broker.port();
      Optional<String> ca = Optional.of(folder.resolve("ca.pem").toString());
      try (ProbeSource source = withPassword(version, url, ca, "any")) {
        source.start(intake);
        broker.publish(
            "heron/in", List.of("20.5"), "--cafile", folder.resolve("ca.pem").toString());
        Eventually.that("a reading", () -> !intake.readings().isEmpty());
        assertThat(intake.begun()).isEmpty();
      }
      RememberingIntake second = new RememberingIntake();
      try (ProbeSource untrusting = withPassword(version, url, Optional.empty(), "any")) {
        untrusting.start(second);
        assertThat(second.begun())
            .singleElement()
            .asString()
            .startsWith(
                "SOURCE_LOST wifi: "
                    + url
                    + ": its certificate is not signed by the given authority");
      }
    }
  }

  /** An authority and a certificate for 127.0.0.1 signed by it. */
  private void certify() throws Exception {
    openssl(
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "2",
        "-subj",
        "/CN=Test CA",
        "-keyout",
        "ca.key",
        "-out",
        "ca.pem");
    openssl(
        "req",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-subj",
        "/CN=broker",
        "-keyout",
        "server.key",
        "-out",
        "server.csr");
    Files.writeString(folder.resolve("san"), "subjectAltName=IP:127.0.0.1\n");
    openssl(
        "x509",
        "-req",
        "-in",
        "server.csr",
        "-CA",
        "ca.pem",
        "-CAkey",
        "ca.key",
        "-CAcreateserial",
        "-days",
        "2",
        "-extfile",
        "san",
        "-out",
        "server.pem");
  }

  private void openssl(String... arguments) throws Exception {
    RealProgram.run(folder, "openssl", arguments);
  }

  @Test
  void variableThatIsNotSetIsAMistakeBeforeTheStart() {
    SourceSpec.Mqtt source =
        new SourceSpec.Mqtt(
            "wifi",
            "mqtt://127.0.0.1:1883",
            Optional.of("logger"),
            Optional.of("HERON_PASSWORD"),
            Optional.empty(),
            3);
    assertThatThrownBy(() -> MqttSources.of(source, List.of(), "Heron Lane", variable -> null))
        .isInstanceOf(MistakeException.class)
        .hasMessage(
            "source \"wifi\": the environment variable HERON_PASSWORD is not set; put the"
                + " broker's password into it");
  }

  @Test
  void fileWithoutACertificateIsAMistakeBeforeTheStart() throws Exception {
    Path ca = Files.writeString(folder.resolve("ca.pem"), "not a certificate");
    assertThatThrownBy(
            () -> withPassword(3, "mqtts://127.0.0.1:1", Optional.of(ca.toString()), "any"))
        .isInstanceOf(MistakeException.class)
        .hasMessageStartingWith("ca = \"" + ca + "\": no certificate in it");
  }

  private static List<String> sent(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "{\"rate\":" + (100 + i) + ",\"at\":" + (1935684000000L + 1000L * i) + "}")
        .toList();
  }
}
