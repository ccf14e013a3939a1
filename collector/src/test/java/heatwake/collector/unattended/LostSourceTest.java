package heatwake.collector.unattended;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** What whoever looks at log and status learns of sources that cannot be reached. */
@Timeout(60)
class LostSourceTest {
  @TempDir private Path folder;
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private final Logger logger = (Logger) LoggerFactory.getLogger("heatwake.collector.recorder");

  @BeforeEach
  void listen() {
    log.start();
    logger.setLevel(Level.INFO);
    logger.addAppender(log);
  }

  @AfterEach
  void listenNoMore() {
    logger.detachAppender(log);
    logger.setLevel(null);
  }

  private static RigFile rig(Mosquitto broker) {
    return RigReader.parse(
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "clips"
        serial = "/dev/no-such-port"
        [[source]]
        name = "wifi"
        mqtt = "%s"
        [[probe]]
        channel = "water-in"
        source = "clips"
        field = "t1"
        unit = "Cel"
        [[probe]]
        channel = "power"
        source = "wifi"
        topic = "heron/power"
        unit = "W"
        """
            .formatted(broker.url()),
        "heron.toml");
  }

  private List<String> told(String source) {
    List<ILoggingEvent> lines;
    synchronized (log) {
      lines = List.copyOf(log.list);
    }
    return lines.stream()
        .map(ILoggingEvent::getFormattedMessage)
        .filter(line -> line.contains("source " + source))
        .toList();
  }

  private static JsonNode source(Recorder recorder, int number) throws Exception {
    String status =
        StatusText.of(recorder, Optional.empty(), 0, run -> List.of(), System.currentTimeMillis());
    return new ObjectMapper().readTree(status).at("/runs/0/sources/" + number);
  }

  @Test
  void lossAndReturnAreInLogAndStatus() throws Exception {
    try (Mosquitto broker = Mosquitto.open(folder);
        Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RigFile rig = rig(broker);
      List<ProbeSource> sources = ProbeSources.of(rig);
      RecordedRun run = recorder.begin(rig);
      for (ProbeSource source : sources) {
        source.start(run);
      }
      assertThat(source(recorder, 0).at("/name").asText()).isEqualTo("clips");
      assertThat(source(recorder, 0).at("/state").asText()).isEqualTo("lost");
      assertThat(source(recorder, 0).at("/why").asText()).contains("/dev/no-such-port");
      assertThat(source(recorder, 0).at("/since").asText()).endsWith("Z");
      assertThat(source(recorder, 1).at("/state").asText()).isEqualTo("ok");
      assertThat(source(recorder, 1).has("why")).isFalse();

      broker.kill();
      Eventually.that("wifi lost", () -> source(recorder, 1).at("/state").asText().equals("lost"));
      broker.start();
      Eventually.that("wifi back", () -> source(recorder, 1).at("/state").asText().equals("ok"));
      sources.forEach(ProbeSource::close);

      // The missing port was tried several times by now.
      assertThat(told("clips"))
          .singleElement()
          .asString()
          .startsWith("Heron Lane: source clips lost: /dev/no-such-port: ");
      assertThat(told("wifi")).hasSize(2);
      assertThat(told("wifi").get(0)).startsWith("Heron Lane: source wifi lost: mqtt://");
      assertThat(told("wifi").get(1)).startsWith("Heron Lane: source wifi is back after ");
    }
  }
}
