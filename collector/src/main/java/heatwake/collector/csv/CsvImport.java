package heatwake.collector.csv;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.clock.ClockStep;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.Appended;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Supplier;

/**
 * Stores a CSV file (RFC 4180, UTF-8) as a run: the whole file in one commit, or nothing of it.
 *
 * <p>Times may stand still, as long as no channel has two readings of one time that differ; a row
 * that repeats one is passed over. They may run backwards only where the logger's clock was set
 * back ({@link RowClock}). A row that alone leaps by more than a day and back is kept at its own
 * time. A cell that is empty is no reading.
 */
public final class CsvImport {
  private static final int READINGS_PER_BATCH = 10_000;
  private static final long NONE_YET = Long.MIN_VALUE;

  private final Store store;
  private final CsvRows rows;
  private final long[] lastOfColumn;
  private final double[] valueOfColumn;
  private final List<Reading> batch = new ArrayList<>(READINGS_PER_BATCH + 64);
  private final ImpossibleReadings impossible = new ImpossibleReadings();
  private final StrayRows strays = new StrayRows();
  private long lastMs = NONE_YET;
  private long repeated;

  private CsvImport(Store store, CsvRows rows) {
    this.store = store;
    this.rows = rows;
    this.lastOfColumn = new long[rows.columns().size()];
    Arrays.fill(lastOfColumn, NONE_YET);
    this.valueOfColumn = new double[lastOfColumn.length];
  }

  /**
   * What came of an import.
   *
   * @param run number of the run
   * @param remarks what was found odd about the file and how it was taken, one sentence each
   * @param clockWasSet whether the logger's clock was set meanwhile
   */
  public record Imported(long run, List<String> remarks, boolean clockWasSet) {
    public Imported {
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * Stores a CSV file as a run.
   *
   * @param rig the site it was measured at; its sources do not matter
   * @throws MistakeException naming file, line and mend; nothing is stored then
   */
  public static Imported run(Store store, RigFile rig, Path csv) {
    try (CsvRows rows = CsvRows.open(csv)) {
      return inOneCommit(store, rig, csv, rows);
    }
  }

  /**
   * The same into a store that is opened, or made, only once the file's header has been read; it is
   * closed again.
   */
  public static Imported run(Supplier<Store> opening, RigFile rig, Path csv) {
    try (CsvRows rows = CsvRows.open(csv);
        Store store = opening.get()) {
      return inOneCommit(store, rig, csv, rows);
    }
  }

  private static Imported inOneCommit(Store store, RigFile rig, Path csv, CsvRows rows) {
    Imported[] imported = new Imported[1];
    try {
      store.inOneCommit(
          () -> {
            imported[0] = new CsvImport(store, rows).run(rig);
            if (imported[0].clockWasSet()) {
              RowBlocks.refuseOutOfOrder(csv);
            }
          });
    } catch (MistakeException mistake) {
      RowBlocks.refuseOutOfOrder(csv);
      throw mistake;
    }
    return imported[0];
  }

  private Imported run(RigFile rig) {
    RowsInView view = new RowsInView(rows, RowClock.ROWS_TO_COME_BACK);
    Optional<CsvRows.Row> row = view.next();
    if (row.isEmpty()) {
      throw rows.mistake("no rows after the header; nothing to import");
    }
    List<Long> followingMs = view.followingMs();
    if (RowClock.isFirstStray(row.get().timeMs(), followingMs)) {
      strays.add(row.get(), followingMs.get(0));
      row = view.next();
    }
    long run = store.beginRun(rig, row.get().timeMs());
    RowClock clock = new RowClock(row.get().timeMs());
    while (row.isPresent()) {
      CsvRows.Row now = row.get();
      followingMs = view.followingMs();
      if (clock.isStray(now.timeMs(), followingMs)) {
        strays.add(now, lastMs);
      } else {
        long beforeMs = clock.clockMs();
        take(now, beforeMs, clock.runMs(now.timeMs(), followingMs.stream().findFirst()));
      }
      if (batch.size() >= READINGS_PER_BATCH) {
        flush(run);
      }
      row = view.next();
    }
    flush(run);
    // After all others, so that a reading in its place comes before one that strays there.
    strays.all().forEach(stray -> take(run, stray));
    strays.report(store, run);
    clock.steps().forEach(step -> report(run, step));
    impossible.report(store, run);
    store.endRun(run, lastMs);
    return new Imported(run, remarks(clock.steps()), !clock.steps().isEmpty());
  }

  private List<String> remarks(List<ClockStep> steps) {
    List<String> remarks = new ArrayList<>();
    for (ClockStep step : steps) {
      remarks.add("at " + CsvTime.format(step.atMs()) + " " + step.text());
    }
    if (!strays.isEmpty()) {
      remarks.add(strays.inWords());
    }
    if (repeated > 0) {
      remarks.add(repeated + (repeated == 1 ? " row" : " rows") + " passed over as repeated");
    }
    return remarks;
  }

  private void take(CsvRows.Row row, long beforeMs, Optional<Long> runMs) {
    long nowMs =
        runMs.orElseThrow(
            () ->
                rows.mistakeAt(
                    row,
                    "time runs backwards: "
                        + CsvTime.format(row.timeMs())
                        + " after "
                        + CsvTime.format(beforeMs)
                        + ", and the rows do not go on from there as after a clock that was set"
                        + " back; sort the rows by time"));
    boolean repeats = nowMs == lastMs;
    lastMs = nowMs;
    for (int i = 0; i < lastOfColumn.length; i++) {
      OptionalDouble value = row.values().get(i);
      if (value.isPresent() && !isRepeated(row, i, value.getAsDouble())) {
        repeats = false;
        take(i, value.getAsDouble());
      }
    }
    repeated += repeats ? 1 : 0;
  }

  private void take(long run, StrayRows.Stray stray) {
    CsvRows.Row row = stray.row();
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < lastOfColumn.length; i++) {
      OptionalDouble value = row.values().get(i);
      if (value.isPresent()) {
        readings.add(reading(i, value.getAsDouble(), row.timeMs(), stray.placeMs()));
      }
    }
    Appended appended = store.append(run, readings);
    for (Reading conflict : appended.conflicts()) {
      throw differs(row, conflict.channel(), row.timeMs(), "");
    }
    repeated += !readings.isEmpty() && appended.stored() == 0 ? 1 : 0;
  }

  private MistakeException differs(CsvRows.Row row, Channel channel, long timeMs, String how) {
    return rows.mistakeAt(
        row,
        "a second reading of "
            + channel
            + " at "
            + CsvTime.format(timeMs)
            + " that differs"
            + how
            + " (times count to the millisecond); drop one");
  }

  /** Whether the column's reading of this time is there already, with this value. */
  private boolean isRepeated(CsvRows.Row row, int columnNumber, double value) {
    if (lastOfColumn[columnNumber] != lastMs) {
      return false;
    }
    if (valueOfColumn[columnNumber] != value) {
      Channel channel = rows.columns().get(columnNumber).channel();
      throw differs(row, channel, lastMs, ": " + value + " after " + valueOfColumn[columnNumber]);
    }
    return true;
  }

  private void take(int columnNumber, double value) {
    lastOfColumn[columnNumber] = lastMs;
    valueOfColumn[columnNumber] = value;
    batch.add(reading(columnNumber, value, lastMs, lastMs));
  }

  /** A reading at a time, in a row that stands at another perhaps. */
  private Reading reading(int columnNumber, double value, long timeMs, long placeMs) {
    CsvHeader.Column column = rows.columns().get(columnNumber);
    double stored = column.toStored(value);
    impossible.look(column.channel(), placeMs, stored);
    return new Reading(column.channel(), timeMs, stored, true);
  }

  private void flush(long run) {
    store.append(run, batch);
    batch.clear();
  }

  private void report(long run, ClockStep step) {
    store.addEvent(
        run,
        EventKind.CLOCK_STEP,
        "clock",
        step.atMs(),
        OptionalLong.of(step.atMs()),
        1,
        step.text());
  }
}
