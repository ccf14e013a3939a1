package heatwake.collector.broker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.rig.SourceSpec;
import java.net.ConnectException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The embedded broker with Mosquitto's client at one end and our source at the other. */
class EmbeddedBrokerTest {
  @TempDir private Path folder;

  private static ProbeSource source(EmbeddedBroker broker) {
    return MqttSources.of(
        new SourceSpec.Mqtt(
            "wifi", broker.url(), Optional.empty(), Optional.empty(), Optional.empty(), 3),
        List.of(Probes.topic(Channel.WATER_IN, "heron/in")),
        "Heron Lane",
        variable -> null);
  }

  @Test
  void carriesWhatAProbePublishes() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0));
        ProbeSource source = source(broker)) {
      source.start(intake);
      List<Double> values = IntStream.range(0, 500).mapToObj(i -> 20 + i / 64.0).toList();
      Mosquitto.publishTo(
          folder, broker.port(), "heron/in", values.stream().map(String::valueOf).toList());
      Eventually.that("all readings", () -> intake.readings().size() >= values.size());
      assertThat(intake.values(Channel.WATER_IN)).containsExactlyElementsOf(values);
    }
  }

  private BrokerConfig withUsers(BrokerLimits limits) throws Exception {
    // A file made by Mosquitto's own tool is read as it is.
    Path users = folder.resolve("users");
    RealProgram.run(folder, "mosquitto_passwd", "-c", "-b", users.toString(), "probe", "s3cret");
    return new BrokerConfig("127.0.0.1", 0, Optional.of(BrokerUsers.read(users)), limits);
  }

  @Test
  void withUsersNobodyElseGetsIn() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(withUsers(BrokerLimits.SITE))) {
      broker.reportTo(intake);
      Mosquitto.publishTo(
          folder, broker.port(), "heron/in", List.of("20"), "-u", "probe", "-P", "s3cret");
      assertRefused(broker);
      assertRefused(broker, "-u", "probe", "-P", "guess");
      assertRefused(broker, "-u", "probe");
      assertRefused(broker, "-u", "stranger", "-P", "s3cret");
      assertThat(intake.happened())
          .allMatch(event -> event.startsWith("CLIENT_REFUSED broker: a client without id at 127"))
          .satisfiesExactly(
              nobody -> assertThat(nobody).endsWith(": no user and password given"),
              guess -> assertThat(guess).endsWith("user \"probe\": wrong password"),
              bare -> assertThat(bare).endsWith(": no user and password given"),
              stranger ->
                  assertThat(stranger)
                      .endsWith("user \"stranger\": no such user in the file of --broker-users"));
      assertRefused(broker, "-u", "probe", "-P", "guess");
      assertRefused(broker, "-u", "probe", "-P", "guess", "-i", "meter");
      assertThat(broker.refused())
          .extracting(one -> one.client() + ": " + one.reason() + " " + one.count())
          .containsExactly(
              "a client without id at 127.0.0.1: no user and password given 2",
              "a client without id at 127.0.0.1 with user \"probe\": wrong password 2",
              "a client without id at 127.0.0.1 with user \"stranger\": no such user in the file of"
                  + " --broker-users 1",
              "client \"meter\" with user \"probe\": wrong password 1");
    }
  }

  @Test
  void refusalsAreToldToEveryRunThatReadsFromIt() throws Exception {
    RememberingIntake pool = new RememberingIntake();
    RememberingIntake spa = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(withUsers(BrokerLimits.SITE))) {
      broker.reportTo(pool);
      broker.reportTo(spa);
      assertRefused(broker, "-u", "probe", "-P", "guess");
      assertThat(pool.happened()).singleElement().asString().endsWith("wrong password");
      assertThat(spa.happened()).isEqualTo(pool.happened());
      assertThat(broker.refused()).extracting(RefusedClient::count).containsExactly(1L);
    }
  }

  private static RigFile reading(String name, String source) {
    return RigReader.parse("[[source]]\nname = \"one\"\n" + source + "\n", name);
  }

  @Test
  void runsOfOtherSourcesAreNotToldOfItsClients() throws Exception {
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0))) {
      String port = ":" + broker.port();
      RigFile loopback = reading("a.toml", "mqtt = \"mqtt://127.0.0.1" + port + "\"");
      RigFile named = reading("b.toml", "mqtt = \"mqtt://localhost" + port + "\"");
      RigFile serial = reading("c.toml", "serial = \"/dev/ttyUSB0\"");
      RigFile elsewhere = reading("d.toml", "mqtt = \"mqtt://192.0.2.1" + port + "\"");
      RigFile otherPort = reading("e.toml", "mqtt = \"mqtt://127.0.0.1:1\"");
      RigFile encrypted = reading("f.toml", "mqtt = \"mqtts://127.0.0.1" + port + "\"");
      assertThat(broker.served(List.of(serial, loopback, elsewhere, named, otherPort, encrypted)))
          .containsExactly(loopback, named);
      assertThat(broker.served(List.of(serial, otherPort))).containsExactly(serial, otherPort);
    }
  }

  @Test
  void isReachedFromElsewhereOnlyWhenToldAndThenNeverWithoutUser() throws Exception {
    InetAddress address = addressOfThisMachineOnTheNetwork();
    String elsewhere = address.getHostAddress();
    try (EmbeddedBroker inside = EmbeddedBroker.start(BrokerConfig.loopback(0))) {
      assertThatThrownBy(() -> new Socket(address, inside.port()).close())
          .isInstanceOf(ConnectException.class);
    }
    BrokerConfig users = withUsers(BrokerLimits.SITE);
    BrokerConfig open = new BrokerConfig("0.0.0.0", 0, users.users(), users.limits());
    try (EmbeddedBroker broker = EmbeddedBroker.start(open)) {
      assertRefused(broker, "-h", elsewhere);
      assertRefused(broker, "-h", elsewhere, "-u", "probe", "-P", "guess");
      Mosquitto.publishTo(
          folder,
          broker.port(),
          "heron/in",
          List.of("20"),
          "-h",
          elsewhere,
          "-u",
          "probe",
          "-P",
          "s3cret");
    }
    assertThatThrownBy(() -> new BrokerConfig("0.0.0.0", 0, Optional.empty(), BrokerLimits.SITE))
        .isInstanceOf(MistakeException.class)
        .hasMessageContaining("needs --broker-users FILE");
  }

  private static InetAddress addressOfThisMachineOnTheNetwork() throws SocketException {
    return NetworkInterface.networkInterfaces()
        .flatMap(NetworkInterface::inetAddresses)
        .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
        .findFirst()
        .orElseGet(
            () -> {
              RealProgram.absent("this machine is on no network");
              return null;
            });
  }

  private void assertRefused(EmbeddedBroker broker, String... options) {
    assertThatThrownBy(
            () -> Mosquitto.publishTo(folder, broker.port(), "heron/in", List.of("20"), options))
        .isInstanceOf(AssertionError.class)
        .hasMessageMatching("(?is).*connection (was )?refused.*");
  }

  /** MQTT 5, 3.1.2.2: a server that does not speak the version of a client may turn it away. */
  @Test
  void clientOfAnotherVersionIsTurnedAwayAndToldWhatToSet() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(withUsers(BrokerLimits.SITE))) {
      broker.reportTo(intake);
      assertRefused(broker, "-V", "5", "-i", "modern");
      assertRefused(broker, "-V", "5", "-i", "modern", "-u", "probe", "-P", "s3cret");
      assertThat(intake.happened())
          .hasSize(2)
          .containsOnly(
              "CLIENT_REFUSED broker: client \"modern\": speaks MQTT 5; set it to MQTT 3.1.1"
                  + " (version 4)");
    }
  }

  /** MQTT 3.1.1, 3.1.3-8: CONNACK with return code 2, then the connection is closed. */
  @Test
  void clientWithoutIdThatWantsItsSessionKeptIsToldSo() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    // Figure 3.6 of MQTT 3.1.1 with the flags all nought, and an id of no bytes.
    byte[] connect = {0x10, 12, 0, 4, 'M', 'Q', 'T', 'T', 4, 0, 0, 60, 0, 0};
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0))) {
      broker.reportTo(intake);
      for (int attempt = 0; attempt < 2; attempt++) {
        try (Socket client = new Socket(InetAddress.getLoopbackAddress(), broker.port())) {
          client.getOutputStream().write(connect);
          assertThat(client.getInputStream().readAllBytes()).containsExactly(0x20, 2, 0, 2);
        }
      }
      assertThat(broker.refused())
          .extracting(one -> one.client() + ": " + one.reason() + " " + one.count())
          .containsExactly(
              "a client without id at 127.0.0.1: wants its session kept, but has no client id; give"
                  + " it one, or a clean session 2");
      assertThat(intake.happened()).hasSize(2);
    }
  }

  /** What a probe sent before we had subscribed would be acknowledged, and reach nobody. */
  @Test
  void nobodyIsAnsweredBeforeTheRecorderIsReady() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    BrokerConfig users = withUsers(BrokerLimits.SITE);
    SourceSpec.Mqtt ours =
        new SourceSpec.Mqtt(
            "wifi", "mqtt://127.0.0.1:1", Optional.empty(), Optional.empty(), Optional.empty(), 3);
    try (EmbeddedBroker broker =
        EmbeddedBroker.startFor(Set.of(MqttSources.session(ours, "Heron Lane")), users)) {
      CompletableFuture<Void> probe =
          CompletableFuture.runAsync(() -> publish(broker, "-u", "probe", "-P", "s3cret"));
      CompletableFuture<Void> guesser =
          CompletableFuture.runAsync(() -> publish(broker, "-u", "probe", "-P", "guess"));
      assertThatThrownBy(() -> probe.get(1, TimeUnit.SECONDS)).isInstanceOf(TimeoutException.class);
      assertThat(guesser).isNotDone();
      assertThat(broker.refused()).isEmpty();
      broker.reportTo(intake);
      broker.letAllIn();
      probe.get(30, TimeUnit.SECONDS);
      assertThatThrownBy(() -> guesser.get(30, TimeUnit.SECONDS))
          .isInstanceOf(ExecutionException.class);
      assertThat(intake.happened()).singleElement().asString().endsWith("wrong password");
    }
  }

  private void publish(EmbeddedBroker broker, String... options) {
    try {
      Mosquitto.publishTo(folder, broker.port(), "heron/in", List.of("20"), options);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void whoMakesUpNamesIsCountedTogether() {
    RefusedClients clients = new RefusedClients();
    for (int i = 0; i < 1000; i++) {
      clients.add("client \"" + i + "\"", "wrong password", i);
    }
    assertThat(clients.all()).hasSize(51).last().matches(one -> one.count() == 950);
    assertThat(clients.all()).last().matches(one -> one.firstMs() == 50 && one.lastMs() == 999);
  }

  @Test
  void clientThatSendsTooMuchIsToldOfAndTheOthersAreNot() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    BrokerLimits tight = new BrokerLimits(64 * 1024, 10, 1);
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0).with(tight));
        ProbeSource source = source(broker)) {
      broker.reportTo(intake);
      source.start(intake);
      List<String> flood = IntStream.range(0, 500).mapToObj(String::valueOf).toList();
      Mosquitto.publishTo(folder, broker.port(), "heron/in", flood, "-q", "0", "-i", "flooder");
      Eventually.that("told of", () -> !intake.happened().isEmpty());
      Mosquitto.publishTo(folder, broker.port(), "heron/in", List.of("1000"), "-i", "calm");
      Eventually.that("calm", () -> intake.values(Channel.WATER_IN).contains(1000.0));
      assertThat(intake.happened().get(0))
          .isEqualTo(
              "FLOODING broker: client \"flooder\" sends more than 1 messages a second; it is"
                  + " slowed down");
      // Ten seconds' worth in one go, and what time gave while it sent.
      assertThat(intake.readings()).hasSizeBetween(11, 100);
    }
  }

  /** What a probe does that kept its readings while it had no network. */
  @Test
  void fastSenderOfMessagesToBeAcknowledgedIsSlowedDownAndLosesNothing() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    BrokerLimits site = new BrokerLimits(64 * 1024, 10, 400);
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0).with(site));
        ProbeSource source = source(broker)) {
      broker.reportTo(intake);
      source.start(intake);
      List<Double> values = IntStream.range(0, 6000).mapToObj(i -> (double) i).toList();
      // It ends only when every message has been acknowledged.
      Mosquitto.publishTo(
          folder,
          broker.port(),
          "heron/in",
          values.stream().map(String::valueOf).toList(),
          "-i",
          "backlog");
      Eventually.that("all of it", () -> intake.readings().size() >= values.size());
      assertThat(intake.values(Channel.WATER_IN)).containsExactlyElementsOf(values);
      assertThat(intake.happened())
          .isNotEmpty()
          .allMatch(
              event ->
                  event.equals(
                      "FLOODING broker: client \"backlog\" sends more than 400 messages a second;"
                          + " it is slowed down"));
    }
  }

  @Test
  void packetThatIsTooLongEndsItsConnectionAndNoOther() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0));
        ProbeSource source = source(broker)) {
      source.start(intake);
      RealProgram.start(
              folder,
              "mosquitto_pub",
              "-p",
              "" + broker.port(),
              "-t",
              "heron/in",
              "-q",
              "1",
              "-m",
              "x".repeat(100_000))
          .close();
      Mosquitto.publishTo(folder, broker.port(), "heron/in", List.of("20.5"));
      Eventually.that("the good one", () -> intake.values(Channel.WATER_IN).contains(20.5));
      assertThat(intake.readings()).hasSize(1);
      assertThat(intake.begun()).isEmpty();
    }
  }

  @Test
  void noMoreClientsThanAllowed() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    BrokerLimits two = new BrokerLimits(64 * 1024, 2, 100);
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0).with(two));
        ProbeSource source = source(broker);
        RealProgram first = subscriber(broker, "first")) {
      broker.reportTo(intake);
      source.start(intake);
      Eventually.that("a second is in", () -> first.isRunning());
      try (RealProgram second = subscriber(broker, "second");
          RealProgram third = subscriber(broker, "third")) {
        Eventually.that(
            "one too many is told of",
            () -> intake.happened().stream().anyMatch(e -> e.contains("2 are connected already")));
        assertThat(second.isRunning() || third.isRunning()).isTrue();
      }
    }
  }

  private RealProgram subscriber(EmbeddedBroker broker, String name) throws Exception {
    return RealProgram.start(
        folder, "mosquitto_sub", "-p", "" + broker.port(), "-t", "none", "-i", name);
  }

  @Test
  void portThatIsTakenIsAMistakeAndWhoHasItIsLookedAfterStill() throws Exception {
    RememberingIntake intake = new RememberingIntake();
    BrokerLimits tight = new BrokerLimits(64 * 1024, 10, 1);
    try (EmbeddedBroker broker = EmbeddedBroker.start(BrokerConfig.loopback(0).with(tight))) {
      broker.reportTo(intake);
      BrokerConfig same = BrokerConfig.loopback(broker.port());
      assertThatThrownBy(() -> EmbeddedBroker.start(same))
          .isInstanceOf(MistakeException.class)
          .hasMessageContaining("choose another with --broker=PORT");
      List<String> flood = IntStream.range(0, 100).mapToObj(String::valueOf).toList();
      Mosquitto.publishTo(folder, broker.port(), "heron/in", flood, "-q", "0");
      Eventually.that("told of", () -> !intake.happened().isEmpty());
    }
  }

  @Test
  void portThatAnotherProgramHasIsAMistake() throws Exception {
    try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      BrokerConfig same = BrokerConfig.loopback(other.getLocalPort());
      assertThatThrownBy(() -> EmbeddedBroker.start(same))
          .isInstanceOf(MistakeException.class)
          .hasMessageContaining("choose another with --broker=PORT");
    }
  }

  @Test
  void usersFileThatIsNoneNamesFileAndLine() throws Exception {
    Path users = Files.writeString(folder.resolve("users"), "# who\nprobe:s3cret\n");
    assertThatThrownBy(() -> BrokerUsers.read(users))
        .isInstanceOf(MistakeException.class)
        .hasMessageStartingWith(users + ":2: not a user and a hashed password");
  }
}
