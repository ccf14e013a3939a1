package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two rigs of one site at one broker, recorded side by side. */
class SessionsApartTest {
  @TempDir private Path folder;

  private static RigFile rig(String file, String source, int port) {
    return RigReader.parse(
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "%2$s"
        mqtt = "mqtt://127.0.0.1:%3$d"
        [[probe]]
        channel = "power"
        source = "%2$s"
        topic = "%1$s/power"
        unit = "W"
        """
            .formatted(file, source, port),
        file + ".toml");
  }

  @Test
  void sourcesOfOneNameAreRefused() {
    List<RigFile> rigs = List.of(rig("left", "wifi", 1883), rig("right", "wifi", 1883));
    assertThatThrownBy(() -> ProbeSources.sessions(rigs))
        .isInstanceOf(MistakeException.class)
        .hasMessage(
            "right.toml:4: source \"wifi\" of site \"Heron Lane\" is also in left.toml, at the same"
                + " broker; the two would push each other out: give one another name");
    ProbeSources.sessions(List.of(rigs.get(0), rig("right", "wifi", 1884)));
  }

  @Test
  void withNamesOfTheirOwnEachGetsItsReadings() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder)) {
      RigFile left = rig("left", "wifi-left", broker.port());
      RigFile right = rig("right", "wifi-right", broker.port());
      ProbeSources.sessions(List.of(left, right));
      Path database = folder.resolve("h.db");
      try (Recorder recorder = Recorder.open(database, RecorderSettings.USUAL);
          ProbeSource one = ProbeSources.of(left).get(0);
          ProbeSource two = ProbeSources.of(right).get(0)) {
        RecordedRun ofLeft = recorder.begin(left);
        RecordedRun ofRight = recorder.begin(right);
        one.start(ofLeft);
        two.start(ofRight);
        broker.publish("left/power", List.of("1000", "1010"));
        broker.publish("right/power", List.of("2000", "2010", "2020"));
        Eventually.that("stored", () -> ofLeft.stored() == 2 && ofRight.stored() == 3);
      }
      try (Store store = Store.openExisting(database)) {
        assertThat(store.load(1).of(Channel.POWER).orElseThrow().value(0)).isEqualTo(1000);
        assertThat(store.load(2).of(Channel.POWER).orElseThrow().value(0)).isEqualTo(2000);
      }
    }
  }
}
