package heatwake.collector.source;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.PtyPair;
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

/** Three serial ports in one rig, each with lines of another form; one is pulled meanwhile. */
class SeveralPortsTest {
  private static final int LINES = 300;

  @TempDir private Path folder;

  private static String entry(String port, String lines, String channel, String field) {
    return String.format(
        """
        [[source]]
        name = "%s"
        serial = "%s"
        lines = "%s"
        [[probe]]
        channel = "%s"
        source = "%s"
        field = "%s"
        unit = "Cel"
        """,
        channel, port, lines, channel, channel, field);
  }

  @Test
  void eachIsReadAndOneThatIsLostHoldsUpNoOther() throws Exception {
    try (PtyPair pairs = PtyPair.plugged(folder, "pairs");
        PtyPair rows = PtyPair.plugged(folder, "rows");
        PtyPair objects = PtyPair.plugged(folder, "objects");
        Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RigFile rig =
          RigReader.parse(
              "[site]\nname = \"Heron Lane\"\n"
                  + entry(pairs.port(), "key-value", "water-in", "t1")
                  + entry(rows.port(), "csv", "water-out", "2")
                  + entry(objects.port(), "json", "water-pool", "/pool/t"),
              "rig.toml");
      RecordedRun run = recorder.begin(rig);
      List<ProbeSource> sources = ProbeSources.of(rig);
      for (ProbeSource source : sources) {
        source.start(run);
      }
      for (int i = 0; i < LINES; i++) {
        if (i < LINES / 2) {
          pairs.send("t1=" + i / 16.0 + " t9=0\r\n");
        } else if (i == LINES / 2) {
          Eventually.that(
              "what was sent is there", () -> count(run, Channel.WATER_IN) == LINES / 2);
          pairs.unplug();
        }
        rows.send("7;" + i / 16.0 + "\n");
        objects.send("{\"pool\":{\"t\":" + i / 16.0 + "}}\n");
      }
      Eventually.that(
          "the others are all there",
          () -> count(run, Channel.WATER_OUT) == LINES && count(run, Channel.WATER_POOL) == LINES);
      Eventually.that("the loss is told", () -> lost(run).equals(List.of("water-in")));
      pairs.plug();
      Eventually.that("and its end", () -> lost(run).isEmpty());
      pairs.send("t1=20 t9=0\n");
      Eventually.that("it goes on", () -> count(run, Channel.WATER_IN) == LINES / 2 + 1);
      sources.forEach(ProbeSource::close);
    }
  }

  private int count(RecordedRun run, Channel channel) {
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      return store.load(run.id()).of(channel).map(series -> series.size()).orElse(0);
    }
  }

  private List<String> lost(RecordedRun run) {
    try (Store store = Store.openExisting(folder.resolve("heatwake.db"))) {
      return store.load(run.id()).events().stream()
          .filter(event -> event.kind() == EventKind.SOURCE_LOST && event.endMs().isEmpty())
          .map(event -> event.subject())
          .toList();
    }
  }
}
