package heatwake.collector.unattended;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.rig.SourceSpec;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The status on a topic, as a subscriber who comes later sees it. */
class StatusTopicTest {
  private static final String TOPIC = "heron/status";

  @TempDir private Path folder;

  private static StatusTopic topic(String url) {
    return new StatusTopic(
        MqttSources.retained(
            new SourceSpec.Mqtt(
                "wifi", url, Optional.empty(), Optional.empty(), Optional.empty(), 3),
            "Heron Lane",
            TOPIC,
            StatusTopic.LAST_WILL,
            variable -> null));
  }

  /** What the broker has kept. */
  private String kept(Mosquitto broker) throws Exception {
    return RealProgram.run(
            folder, "mosquitto_sub", "-p", "" + broker.port(), "-t", TOPIC, "-C", "1", "-W", "10")
        .strip();
  }

  @Test
  void isKeptByTheBrokerAndSaysStoppedAfterACleanEnd() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder)) {
      StatusTopic status = topic(broker.url());
      status.put("{\"state\":\"recording\"}");
      assertThat(kept(broker)).isEqualTo("{\"state\":\"recording\"}");
      status.close();
      assertThat(kept(broker)).isEqualTo("{\"state\":\"stopped\"}");
    }
  }

  @Test
  void saysLostWhenTheRecorderVanishes() throws Exception {
    int port = Mosquitto.freePort();
    try (Mosquitto broker = Mosquitto.open(folder)) {
      RealProgram network =
          RealProgram.start(
              folder,
              "socat",
              "TCP-LISTEN:" + port + ",bind=127.0.0.1,reuseaddr,fork",
              "TCP:127.0.0.1:" + broker.port());
      Eventually.that("the network is up", () -> connects(port));
      StatusTopic status = topic("mqtt://127.0.0.1:" + port);
      status.put("{\"state\":\"recording\"}");
      network.killWithChildren();
      Eventually.that("the last will", () -> kept(broker).equals(StatusTopic.LAST_WILL));
      status.close();
    }
  }

  private static boolean connects(int port) {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      return socket.isConnected();
    } catch (IOException notYet) {
      return false;
    }
  }
}
