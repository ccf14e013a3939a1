package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.coverage.WrongStamps;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.StampsLeftOut;
import heatwake.collector.clock.ClockStep;
import heatwake.collector.probe.Reading;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings whose stamps cannot be right, on a real database, read at one go and by and by. */
class WrongStampsTest {
  private static final RigFile RIG =
      RigReader.parseForImport("[site]\nname = \"Heron Lane\"\n", "rig.toml");
  private static final long HOUR = 3_600_000;
  private static final long DAY = 24 * HOUR;
  private static final long START = Instant.parse("2021-05-04T18:00:00Z").toEpochMilli();
  private static final long YEARS_AHEAD = Instant.parse("2031-01-01T00:00:00Z").toEpochMilli();
  private static final long YEARS_AGO = Instant.parse("2001-01-01T00:00:00Z").toEpochMilli();

  @TempDir Path folder;
  private Store store;
  private Store reader;
  private RunFollower follower;

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("h.db"));
    reader = Store.openExisting(folder.resolve("h.db"));
  }

  @AfterEach
  void close() {
    reader.close();
    store.close();
  }

  private long recorded(long beganMs) {
    long run = store.beginRun(RIG, beganMs);
    event(run, EventKind.RECORDER_STARTED, beganMs);
    follower = reader.follow(run);
    return run;
  }

  private void event(long run, EventKind kind, long atMs) {
    store.addEvent(run, kind, "recorder", atMs, OptionalLong.of(atMs), 1, "so it was");
  }

  private void step(long run, long byMs) {
    ClockStep step = new ClockStep(START + HOUR, byMs, Math.max(0, -byMs));
    store.addEvent(
        run,
        EventKind.CLOCK_STEP,
        "clock",
        step.atMs(),
        OptionalLong.of(step.atMs()),
        1,
        step.text());
  }

  private void hours(long run, int from, int to) {
    List<Reading> readings = new ArrayList<>();
    for (int minute = from * 60; minute < to * 60; minute++) {
      readings.add(new Reading(Channel.POWER, START + minute * 60_000L, minute, true));
    }
    store.append(run, readings);
  }

  private void stray(long run, long... stampsMs) {
    for (long stampMs : stampsMs) {
      store.append(run, List.of(new Reading(Channel.WATER_IN, stampMs, 20, true)));
    }
  }

  private Recording read(long run) {
    Recording whole = store.load(run);
    Recording followed = follower.read();
    assertThat(followed.startMs()).isEqualTo(whole.startMs());
    assertThat(followed.endMs()).isEqualTo(whole.endMs());
    assertThat(followed.leftOut()).isEqualTo(whole.leftOut());
    assertThat(followed.series().keySet()).isEqualTo(whole.series().keySet());
    whole
        .series()
        .forEach(
            (channel, one) -> {
              assertThat(followed.of(channel).orElseThrow().size()).isEqualTo(one.size());
              for (int i = 0; i < one.size(); i++) {
                assertThat(followed.of(channel).orElseThrow().timeMs(i)).isEqualTo(one.timeMs(i));
              }
            });
    return whole;
  }

  @Test
  void areKeptButTakeNoPartAndAreSaid() {
    long run = recorded(START);
    hours(run, 0, 1);
    stray(run, YEARS_AHEAD);
    read(run);
    hours(run, 1, 2);
    stray(run, YEARS_AHEAD + DAY, YEARS_AGO);
    read(run);
    hours(run, 2, 4);
    store.endRun(run, START + 4 * HOUR);

    Recording recording = read(run);
    assertThat(recording.startMs()).isEqualTo(START);
    assertThat(recording.endMs()).isEqualTo(START + 4 * HOUR - 60_000);
    assertThat(WrongStamps.of(recording))
        .containsExactly(
            "water-in: 3 readings left out, stamped far outside the run (such as"
                + " 2001-01-01 00:00 UTC); set the probe's clock");
    assertThat(store.readingCount(run)).isEqualTo(243);
    assertThat(store.runHeadings().get(0).startMs()).isEqualTo(START);
    assertThat(store.runHeadings().get(0).endMs()).hasValue(recording.endMs());
  }

  @Test
  void aWeekBeforeAndADayAfterAreBelieved() {
    long run = recorded(START);
    hours(run, 0, 2);
    store.endRun(run, START + 2 * HOUR);
    stray(run, START - 7 * DAY, START + 2 * HOUR + DAY);
    assertThat(read(run).leftOut()).isEmpty();
    stray(run, START - 7 * DAY - 1, START + 2 * HOUR + DAY + 1);
    assertThat(read(run).leftOut())
        .containsExactly(
            new StampsLeftOut(Channel.WATER_IN, 1, START - 7 * DAY - 1),
            new StampsLeftOut(Channel.WATER_IN, 1, START + 2 * HOUR + DAY + 1));
  }

  @Test
  void theEndOfTheRunBringsTheLimitNearer() {
    long run = recorded(START);
    hours(run, 0, 2);
    stray(run, START + 20 * DAY);
    assertThat(read(run).leftOut()).isEmpty();
    store.endRun(run, START + 2 * HOUR);
    assertThat(read(run).endMs()).isEqualTo(START + 2 * HOUR - 60_000);
  }

  @Test
  void allIsTakenWhereTheLoggersClockIsNoMeasure() {
    long half = recorded(START);
    stray(half, YEARS_AHEAD, YEARS_AHEAD + 1);
    store.append(
        half,
        List.of(
            new Reading(Channel.POWER, START, 1, true),
            new Reading(Channel.POWER, START + 1, 1, true)));
    store.endRun(half, START + HOUR);
    assertThat(read(half).endMs()).isEqualTo(YEARS_AHEAD + 1);

    long stepped = recorded(START);
    hours(stepped, 0, 1);
    stray(stepped, YEARS_AHEAD);
    store.endRun(stepped, START + HOUR);
    assertThat(read(stepped).leftOut()).hasSize(1);
    step(stepped, -HOUR - 500);
    assertThat(read(stepped).leftOut()).isEmpty();

    long neverSet = recorded(5);
    hours(neverSet, 0, 1);
    store.append(neverSet, List.of(new Reading(Channel.WATER_IN, 10, 20, true)));
    store.endRun(neverSet, HOUR);
    assertThat(read(neverSet).leftOut()).isEmpty();
  }

  /** A clock that was set by up to an hour in all cannot make a stamp a day wrong. */
  @Test
  void aSmallStepOfTheClockSwitchesNothingOff() {
    long run = recorded(START);
    hours(run, 0, 1);
    stray(run, YEARS_AHEAD);
    store.endRun(run, START + HOUR);
    step(run, HOUR / 2);
    step(run, -HOUR / 2);
    assertThat(read(run).leftOut()).hasSize(1);
    assertThat(read(run).endMs()).isEqualTo(START + HOUR - 60_000);
    step(run, 500);
    assertThat(read(run).leftOut()).isEmpty();
  }

  @Test
  void aStepThatTellsNoSizeIsTakenForALargeOne() {
    long run = recorded(START);
    hours(run, 0, 1);
    stray(run, YEARS_AHEAD);
    store.endRun(run, START + HOUR);
    event(run, EventKind.CLOCK_STEP, START + HOUR);
    assertThat(read(run).leftOut()).isEmpty();
  }

  @Test
  void aRunThatWasKilledEndsAtItsLastSoundReading() {
    long run = recorded(START);
    hours(run, 0, 2);
    stray(run, YEARS_AHEAD);
    Recorder.open(folder.resolve("h.db"), RecorderSettings.USUAL).close();
    Recording recording = read(run);
    assertThat(recording.endMs()).isEqualTo(START + 2 * HOUR - 60_000);
    assertThat(store.runRow(run).endedMs()).hasValue(recording.endMs());
    assertThat(recording.leftOut()).hasSize(1);
  }

  @Test
  void anImportedRunGoesByTheBulkOfItsStamps() {
    long run = store.beginRun(RIG, YEARS_AGO);
    follower = reader.follow(run);
    hours(run, 0, 2);
    stray(run, YEARS_AHEAD, YEARS_AGO);
    store.endRun(run, YEARS_AHEAD);
    Recording recording = read(run);
    assertThat(recording.startMs()).isEqualTo(START);
    assertThat(recording.endMs()).isEqualTo(START + 2 * HOUR - 60_000);
    assertThat(recording.leftOut()).hasSize(2);
  }

  @Test
  void anImportedRunOfManyDaysStaysWhole() {
    long run = store.beginRun(RIG, START);
    follower = reader.follow(run);
    // Dense at first, then an hour in six days, three weeks long; then nothing for ten days.
    hours(run, 0, 12);
    for (int day = 6; day < 24; day += 6) {
      hours(run, day * 24, day * 24 + 1);
    }
    hours(run, 28 * 24, 28 * 24 + 1);
    assertThat(read(run).leftOut()).isEmpty();
    assertThat(read(run).endMs()).isEqualTo(START + 28 * DAY + HOUR - 60_000);
  }
}
