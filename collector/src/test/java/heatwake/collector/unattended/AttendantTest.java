package heatwake.collector.unattended;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A recorder left alone, seen from outside. */
@Timeout(60)
class AttendantTest {
  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\nevery = \"1 s\"\n",
          "rig.toml");
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  @TempDir private Path folder;

  @Test
  void keepsItsStateInAFile() throws Exception {
    Path database = folder.resolve("heatwake.db");
    Path file = folder.resolve("status.json");
    try (Recorder recorder = Recorder.open(database, RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RIG);
      CountDownLatch safe = new CountDownLatch(1);
      run.deliver(
          new Delivery(List.of(new Reading(Channel.POWER, START, 2750, true)), safe::countDown));
      safe.await();
      try (Attendant attendant =
          new Attendant(recorder, List.of(new StatusFile(file)), (site, id, flag) -> {})) {
        attendant.start();
        while (!Files.exists(file)) {
          Thread.sleep(10);
        }
        JsonNode status = new ObjectMapper().readTree(Files.readString(file));
        assertThat(status.at("/state").asText()).isEqualTo("recording");
        assertThat(status.at("/runs/0/run").asLong()).isEqualTo(run.id());
        assertThat(status.at("/runs/0/site").asText()).isEqualTo("Heron Lane");
        assertThat(status.at("/runs/0/readings").asLong()).isEqualTo(1);
        assertThat(status.at("/runs/0/latest/power/value").asDouble()).isEqualTo(2750);
        assertThat(status.at("/runs/0/latest/power/unit").asText()).isEqualTo("W");
        assertThat(status.at("/disk_free_bytes").asLong()).isPositive();
      }
      JsonNode after = new ObjectMapper().readTree(Files.readString(file));
      assertThat(after.at("/state").asText()).isEqualTo("stopped");
    }
  }

  @Test
  void tellsEachFlagOnce() {
    List<String> told = new ArrayList<>();
    try (Store store = Store.open(folder.resolve("heatwake.db"))) {
      long run = store.beginRun(RIG, START);
      List<Reading> readings = new ArrayList<>();
      for (int s = 0; s < 1800; s++) {
        if (s < 600 || s > 1200) {
          readings.add(new Reading(Channel.POWER, START + 1000L * s, 2750, true));
        }
      }
      store.append(run, readings);
      FlagWatch watch = new FlagWatch(store, (site, id, flag) -> told.add(flag.rule()));
      watch.look("Heron Lane", run);
      assertThat(told).containsOnlyOnce("data-gap");
      int before = told.size();
      store.append(run, List.of(new Reading(Channel.POWER, START + 1_801_000, 2750, true)));
      watch.look("Heron Lane", run);
      assertThat(told).hasSize(before);
    }
  }

  @Test
  void passesAFlagToACommandWithoutLettingItBecomeOne() throws Exception {
    Path seen = folder.resolve("seen");
    Path trap = folder.resolve("trap");
    String evidence = "$(touch " + trap + ") `touch " + trap + "`; touch " + trap;
    new FlagCommand("printf '%s' \"$HEATWAKE_RULE|$HEATWAKE_RUN|$HEATWAKE_EVIDENCE\" > " + seen)
        .arose(
            "Heron Lane",
            3,
            new Flag(
                "no-flow", Side.WATER, Severity.ALARM, START, START, evidence, List.of(), "look"));
    assertThat(seen).hasContent("no-flow|3|" + evidence);
    assertThat(trap).doesNotExist();
  }
}
