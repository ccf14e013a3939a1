package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.series.StampsLeftOut;
import heatwake.collector.rig.RigReader;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Reads a run again and again while it is being recorded: the last minutes and whatever came in
 * since, wherever it belongs in time. What it gives is, to the last bit, what {@link Store#load}
 * gives at that moment.
 *
 * <p>It holds the run once, as the recording it gave last. After a failure it goes on from there.
 */
public final class RunFollower {
  /** Where the readings of one channel go. */
  private record Intake(Series.Builder series, Unit unit) {
    void add(long timeMs, double value) {
      series.add(timeMs, unit.toSi(value));
    }
  }

  private final Store store;
  private final Transactions transactions;
  private final ReadingTable readings;
  private final RunLog log;
  private final StampJudge judge;
  private final long run;

  private RunRow row;
  private StampWindow window;
  private Recording last;
  private BlockCounts counts = new BlockCounts();

  RunFollower(
      Store store,
      Transactions transactions,
      ReadingTable readings,
      RunLog log,
      StampJudge judge,
      long run) {
    this.store = store;
    this.transactions = transactions;
    this.readings = readings;
    this.log = log;
    this.judge = judge;
    this.run = run;
  }

  /** The run that is followed. */
  public long run() {
    return run;
  }

  /**
   * The run as far as it has been recorded.
   *
   * @throws heatwake.collector.mistake.MistakeException naming the runs there are, if it is none of
   *     them
   * @throws StoreException if it cannot be read now
   */
  public Recording read() {
    return transactions.inOneView(this::next);
  }

  private Recording next() throws SQLException {
    RunRow now = store.runRow(run);
    boolean sameRun = last != null && now.continues(row);
    StampWindow believed =
        judge.window(run, now.beganMs(), now.endedMs(), System.currentTimeMillis());
    boolean goesOn = sameRun && believed.fromMs() == window.fromMs();
    long fromMs = goesOn ? firstMsToRead(believed.untilMs()) : Long.MIN_VALUE;
    BlockCounts held = counts.before(fromMs);
    Map<Channel, Intake> intakes = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      intakes.put(channel, new Intake(begun(channel, fromMs), channel.storedUnit()));
    }
    readings.visit(
        run,
        Math.max(fromMs, believed.fromMs()),
        believed.untilMs(),
        new ReadingVisitor() {
          @Override
          public void reading(Channel channel, long timeMs, double value) {
            held.add(timeMs);
            intakes.get(channel).add(timeMs, value);
          }

          @Override
          public void ofUnknownChannel(long timeMs) {
            held.add(timeMs);
          }
        });
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    intakes.forEach((channel, intake) -> series.put(channel, intake.series.build()));
    long startMs = readings.firstMs(run, believed.fromMs()).orElse(now.beganMs());
    long endMs = readings.lastMs(run, believed.untilMs()).orElse(now.endedMs().orElse(startMs));
    List<StampsLeftOut> leftOut =
        new ArrayList<>(readings.summary(run, Long.MIN_VALUE, believed.fromMs()));
    leftOut.addAll(readings.summary(run, believed.untilMs(), Long.MAX_VALUE));
    Recording recording =
        new Recording(
            run,
            sameRun ? last.rig() : RigReader.parseForImport(now.rigText(), now.rigName()).rig(),
            startMs,
            endMs,
            series,
            log.events(run),
            log.notes(run),
            leftOut);
    row = now;
    window = believed;
    last = recording;
    counts = held;
    return recording;
  }

  private Series.Builder begun(Channel channel, long untilMs) {
    return untilMs == Long.MIN_VALUE
        ? Series.of(channel)
        : last.of(channel).map(one -> one.until(untilMs)).orElseGet(() -> Series.of(channel));
  }

  /** The latest beginning of a block before which nothing has come in, and nothing is disowned. */
  private long firstMsToRead(long untilMs) throws SQLException {
    List<Long> starts = counts.settledStarts(untilMs);
    if (starts.isEmpty()) {
      return Long.MIN_VALUE;
    }
    long fromMs = starts.get(starts.size() - 1);
    long cameIn = readings.countBetween(run, window.fromMs(), fromMs) - counts.countBefore(fromMs);
    // Nearly always nothing has; what has is mostly not much older.
    for (int i = starts.size() - 2; i >= 0 && cameIn != 0; i--) {
      long blockMs = starts.get(i);
      long held = counts.countBefore(fromMs) - counts.countBefore(blockMs);
      cameIn -= readings.countBetween(run, blockMs, fromMs) - held;
      fromMs = blockMs;
    }
    return cameIn == 0 ? fromMs : Long.MIN_VALUE;
  }
}
