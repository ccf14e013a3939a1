package heatwake.collector.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.MachineClock;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder process on a serial line whose clock is set while it records. The probe has no time
 * stamps of its own, so all times in the run are the recorder's.
 */
@Timeout(240)
class ClockSetTest {
  private static final long HOUR_S = 3600;
  private static final long DAY_S = 24 * HOUR_S;
  private static final int BETWEEN = 20;

  @TempDir private Path folder;

  @Test
  void everyReadingIsThereOnceInOrderAndEachStepIsTold() throws Exception {
    Optional<MachineClock> settable = MachineClock.in(folder);
    if (settable.isEmpty()) {
      RealProgram.absent("libfaketime is not installed");
    }
    MachineClock clock = settable.orElseThrow();
    // A machine without a battery clock: it learns the date later.
    clock.set(-System.currentTimeMillis() / 1000 + HOUR_S);
    Path database = folder.resolve("heatwake.db");
    int sent = 0;
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        RecorderUnderSoak recorder =
            new RecorderUnderSoak(folder, rig(cable), database, Integer.MAX_VALUE, clock)) {
      recorder.start();
      Eventually.that("recording", () -> recorder.said("recording") > 0);
      for (long aheadS : List.of(0L, -2 * HOUR_S, DAY_S, 0L)) {
        sent = send(cable, sent, database);
        clock.set(aheadS);
      }
      sent = send(cable, sent, database);
      recorder.stop();
    }
    check(database, sent);
  }

  private Path rig(PtyPair cable) throws Exception {
    return Files.writeString(
        folder.resolve("rig.toml"),
        """
        [site]
        name = "Heron Lane"
        [[source]]
        name = "clips"
        serial = "%s"
        lines = "key-value"
        [[probe]]
        channel = "water-in"
        source = "clips"
        field = "t1"
        unit = "Cel"
        """
            .formatted(cable.port()));
  }

  /** Sends some lines and waits until they are stored. */
  private static int send(PtyPair cable, int from, Path database) throws Exception {
    for (int i = from; i < from + BETWEEN; i++) {
      cable.send("t1=" + (10 + i / 8.0) + "\n");
      Thread.sleep(20);
    }
    Eventually.that("stored", () -> load(database).of(Channel.WATER_IN).isPresent());
    Eventually.that(
        "all stored",
        () -> load(database).of(Channel.WATER_IN).orElseThrow().size() == from + BETWEEN);
    return from + BETWEEN;
  }

  private static Recording load(Path database) {
    try (Store store = Store.openExisting(database)) {
      return store.load(1);
    }
  }

  private static void check(Path database, int sent) {
    Recording recording = load(database);
    Series water = recording.of(Channel.WATER_IN).orElseThrow();
    assertThat(water.size()).isEqualTo(sent);
    for (int i = 0; i < sent; i++) {
      assertThat(water.value(i)).isCloseTo(283.15 + i / 8.0, within(1e-9));
    }
    assertThat(recording.events())
        .filteredOn(event -> event.kind() == EventKind.CLOCK_STEP)
        .extracting(ClockSetTest::sizeOf)
        .satisfiesExactly(
            // From 1970 to today: so many seconds that a rounded text would hide a mistake.
            text -> assertThat(text).startsWith("forward by 1"),
            text -> assertThat(text).isEqualTo("back by 7200"),
            text -> assertThat(text).isEqualTo("forward by 93600"),
            text -> assertThat(text).isEqualTo("back by 86400"));
    // Set back two hours, forward a day and two hours, back a day: the run is never set back.
    long lastMs = water.timeMs(sent - 1);
    assertThat(lastMs - System.currentTimeMillis())
        .isBetween(1000 * (DAY_S - 120), 1000 * (DAY_S + 120));
  }

  /** Direction and size of a step, to the second. */
  private static String sizeOf(RunEvent event) {
    String[] words = event.text().split(" ");
    int by = List.of(words).indexOf("by");
    return words[by - 1] + " by " + Math.round(Double.parseDouble(words[by + 1]));
  }
}
