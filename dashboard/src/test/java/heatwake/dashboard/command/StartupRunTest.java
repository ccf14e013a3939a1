package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartupRunTest {
  private static final long START = 1_935_684_000_000L;

  @TempDir Path folder;

  private static long run(Store store, String rigFile, String heater, long startMs) {
    String rig =
        "[site]\nname = \"Heron Lane\"\n"
            + heater
            + "[[probe]]\nchannel = \"power\"\nunit = \"W\"\n";
    long run = store.beginRun(RigReader.parseForImport(rig, rigFile), startMs);
    store.append(run, List.of(new Reading(Channel.POWER, startMs, 2000, true)));
    store.endRun(run, startMs + 1000);
    return run;
  }

  @Test
  void twoHeatersOfASiteAreNotHeldAgainstEachOther() {
    String one = "[heater]\nlabel = \"unit 1\"\n";
    String two = "[heater]\nlabel = \"unit 2\"\n";
    try (Store store = Store.open(folder.resolve("h.db"))) {
      final long plainLeft = run(store, "left.toml", "", START);
      final long plainRight = run(store, "right.toml", "", START + 10_000);
      final long first = run(store, "start-up.toml", one, START + 20_000);
      assertThat(before(store, plainRight)).isEmpty();
      assertThat(before(store, run(store, "/etc/heatwake/left.toml", "", START + 30_000)))
          .containsExactly(plainLeft);
      assertThat(before(store, run(store, "night.toml", two, START + 40_000))).isEmpty();
      assertThat(before(store, first)).isEmpty();
    }
  }

  private static List<Long> before(Store store, long run) {
    return StartupRun.before(store.load(run), store).stream().map(Recording::run).toList();
  }
}
