package heatwake.collector.csv;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.Store;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Stores a CSV file (RFC 4180, UTF-8) as a run: the whole file in one commit, or nothing of it.
 *
 * <p>Times may stand still, as long as no channel has two readings of one time, but not run
 * backwards; a cell that is empty is no reading.
 */
public final class CsvImport {
  private static final int READINGS_PER_BATCH = 10_000;
  private static final long NONE_YET = Long.MIN_VALUE;

  private final Store store;
  private final CsvRows rows;
  private final long[] lastOfColumn;
  private final List<Reading> batch = new ArrayList<>(READINGS_PER_BATCH + 64);
  private final Map<Channel, Impossible> impossible = new EnumMap<>(Channel.class);
  private long lastMs = NONE_YET;

  private CsvImport(Store store, CsvRows rows) {
    this.store = store;
    this.rows = rows;
    this.lastOfColumn = new long[rows.columns().size()];
    Arrays.fill(lastOfColumn, NONE_YET);
  }

  /** Readings of one channel that cannot be true. */
  private record Impossible(long firstMs, long lastMs, long count, double first) {}

  /**
   * Stores a CSV file as a run.
   *
   * @param rig the site it was measured at; its sources do not matter
   * @return number of the run
   * @throws MistakeException naming file, line and mend; nothing is stored then
   */
  public static long run(Store store, RigFile rig, Path csv) {
    long[] run = new long[1];
    try (CsvRows rows = CsvRows.open(csv)) {
      store.inOneCommit(() -> run[0] = new CsvImport(store, rows).run(rig));
    }
    return run[0];
  }

  private long run(RigFile rig) {
    Optional<CsvRows.Row> row = rows.next();
    if (row.isEmpty()) {
      throw rows.mistake("no rows after the header; nothing to import");
    }
    long run = store.beginRun(rig, row.get().timeMs());
    while (row.isPresent()) {
      take(row.get());
      if (batch.size() >= READINGS_PER_BATCH) {
        flush(run);
      }
      row = rows.next();
    }
    flush(run);
    impossible.forEach((channel, one) -> report(run, channel, one));
    store.endRun(run, lastMs);
    return run;
  }

  private void take(CsvRows.Row row) {
    if (row.timeMs() < lastMs) {
      throw rows.mistake(
          "time runs backwards: "
              + CsvTime.format(row.timeMs())
              + " after "
              + CsvTime.format(lastMs)
              + "; sort the rows by time");
    }
    lastMs = row.timeMs();
    for (int i = 0; i < lastOfColumn.length; i++) {
      OptionalDouble value = row.values().get(i);
      if (value.isPresent()) {
        take(i, value.getAsDouble());
      }
    }
  }

  private void take(int columnNumber, double value) {
    CsvHeader.Column column = rows.columns().get(columnNumber);
    if (lastOfColumn[columnNumber] == lastMs) {
      throw rows.mistake(
          "a second reading of "
              + column.channel()
              + " at "
              + CsvTime.format(lastMs)
              + " (times count to the millisecond); drop one");
    }
    lastOfColumn[columnNumber] = lastMs;
    double stored = column.toStored(value);
    if (!column.channel().isPossible(stored)) {
      impossible.merge(
          column.channel(),
          new Impossible(lastMs, lastMs, 1, stored),
          (before, now) ->
              new Impossible(before.firstMs, now.lastMs, before.count + 1, before.first));
    }
    batch.add(new Reading(column.channel(), lastMs, stored, true));
  }

  private void flush(long run) {
    store.append(run, batch);
    batch.clear();
  }

  private void report(long run, Channel channel, Impossible one) {
    store.addEvent(
        run,
        EventKind.OUT_OF_RANGE,
        channel.id(),
        one.firstMs,
        OptionalLong.of(one.lastMs),
        one.count,
        channel
            + " of "
            + one.first
            + " "
            + channel.storedUnit().code()
            + " cannot be; possible is "
            + channel.possibleRange());
  }
}
