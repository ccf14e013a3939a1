package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** A probe that says nothing is told to who looks at the log or at the state of the run. */
class SilenceToldTest {
  private static final long START = 1_935_684_000_000L;
  private static final RigFile RIG =
      RigReader.parse(
          """
          [site]
          name = "Heron Lane"
          [[probe]]
          channel = "water-in"
          every = "1 s"
          unit = "Cel"
          [[probe]]
          channel = "power"
          every = "1 s"
          unit = "W"
          """,
          "rig.toml");

  @TempDir private Path folder;

  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private final Logger logger = (Logger) LoggerFactory.getLogger(ProbeWatches.class);

  @BeforeEach
  void listen() {
    log.start();
    logger.addAppender(log);
  }

  @AfterEach
  void leave() {
    logger.detachAppender(log);
  }

  private List<String> told() {
    return List.copyOf(log.list).stream().map(ILoggingEvent::getFormattedMessage).toList();
  }

  @Test
  void severalAtOnceAreOneLineAndWhoSpeaksAgainIsSilentNoMore() throws Exception {
    SettableClock clock = new SettableClock(START);
    try (Recorder recorder =
        Recorder.open(folder.resolve("h.db"), RecorderSettings.USUAL.with(clock))) {
      RecordedRun run = recorder.begin(RIG);
      clock.passMs(15_000);
      Eventually.that("both silent", () -> run.silent().size() == 2);
      Eventually.that("told", () -> !told().isEmpty());
      run.deliver(Delivery.of(List.of(new Reading(Channel.POWER, START + 15_000, 2000, false))));
      Eventually.that("spoke", () -> run.silent().equals(Set.of(Channel.WATER_IN)));
      // Silent again within the minute: in the state at once, in the log later.
      clock.passMs(20_000);
      Eventually.that("silent again", () -> run.silent().size() == 2);
      assertThat(told())
          .containsExactly(
              "Heron Lane: water-in has never sent anything, for 15 s; stated is one every 1.00 s;"
                  + " check the probe's power, wire and reach; and 1 more, see the status");
      clock.passMs(60_000);
      Eventually.that("told later", () -> told().size() == 2);
      assertThat(told().get(1)).startsWith("Heron Lane: power has sent nothing for 20 s");
    }
  }
}
