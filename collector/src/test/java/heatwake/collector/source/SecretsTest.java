package heatwake.collector.source;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.read.ListAppender;
import heatwake.analysis.series.EventKind;
import heatwake.collector.csv.CsvExport;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Mosquitto;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** The broker's password, right and wrong, and every byte that the recorder leaves behind. */
class SecretsTest {
  private static final String RIGHT = "tuppence-heron-41";
  private static final String WRONG = "sixpence-otter-17";

  @TempDir private Path brokerFolder;
  @TempDir private Path folder;

  private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
  private final Level usual = root.getLevel();
  private final List<Appender<ILoggingEvent>> usualPlaces = new ArrayList<>();
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();

  @BeforeEach
  void logEverything() {
    root.iteratorForAppenders().forEachRemaining(usualPlaces::add);
    usualPlaces.forEach(root::detachAppender);
    log.start();
    root.addAppender(log);
    root.setLevel(Level.TRACE);
  }

  @AfterEach
  void logAsUsual() {
    root.setLevel(usual);
    root.detachAppender(log);
    usualPlaces.forEach(root::addAppender);
  }

  @Test
  void areInNoFileNoLogAndNoExport() throws Exception {
    Path users = brokerFolder.resolve("users");
    RealProgram.run(
        brokerFolder, "mosquitto_passwd", "-c", "-b", users.toString(), "logger", RIGHT);
    StringWriter export = new StringWriter();
    long run = record(users);
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      CsvExport.write(store, run, export);
      assertThat(store.load(run).events())
          .anyMatch(event -> event.kind() == EventKind.SOURCE_LOST)
          .anyMatch(event -> event.kind() == EventKind.UNREADABLE);
    }
    for (String secret : List.of(RIGHT, WRONG)) {
      assertThat(export.toString()).doesNotContain(secret);
      assertThat(log.list).noneMatch(one -> one.getFormattedMessage().contains(secret));
      assertThat(filesWith(secret)).isEmpty();
    }
    // The search finds what is there: the rig is kept in the database as it was written.
    assertThat(filesWith("HERON_PASSWORD")).isNotEmpty();
  }

  /** Records with the wrong password, then with the right one. */
  private long record(Path users) throws Exception {
    try (Mosquitto broker =
            Mosquitto.with(brokerFolder, "allow_anonymous false", "password_file " + users);
        Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RigFile rig =
          RigReader.parse(
              """
              [site]
              name = "Heron Lane"
              [[source]]
              name = "wifi"
              mqtt = "%s"
              user = "logger"
              password-env = "HERON_PASSWORD"
              [[probe]]
              channel = "water-in"
              source = "wifi"
              topic = "heron/in"
              unit = "Cel"
              """
                  .formatted(broker.url()),
              "rig.toml");
      RecordedRun run = recorder.begin(rig);
      try (ProbeSource refused =
          ProbeSources.of(rig, Map.of("HERON_PASSWORD", WRONG)::get).get(0)) {
        refused.start(run);
      }
      try (ProbeSource source = ProbeSources.of(rig, Map.of("HERON_PASSWORD", RIGHT)::get).get(0)) {
        source.start(run);
        broker.publish("heron/in", List.of("20.5", "{}"), "-u", "logger", "-P", RIGHT);
        Eventually.that("a reading", () -> run.stored() == 1);
      }
      return run.id();
    }
  }

  private List<Path> filesWith(String text) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).filter(file -> holds(file, text)).toList();
    }
  }

  private static boolean holds(Path file, String text) {
    try {
      return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(text);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
