package heatwake.collector.store;

import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.UnnamedSite;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;

/**
 * An SQLite file of runs (WAL, versioned schema). One writer at a time and any number of readers,
 * in this process or another. An instance is used by one thread at a time.
 *
 * <p>Whatever a method has stored when it returns is on the disk (synchronous=FULL), unless it runs
 * inside {@link #inOneCommit}; then it is when that returns.
 */
public final class Store implements AutoCloseable {
  /** A site with more runs than this since the rig's last one has changed beyond redelivery. */
  public static final int MOST_EARLIER_RUNS = 1000;

  private final Path file;
  private final Connection connection;
  private final ReadingTable readings;
  private final RunLog log;
  private final RunTable runs;
  private final DeliveredBook delivered;
  private final StampJudge judge;
  private final Transactions transactions;
  private final FileMark opened;

  Store(Path file, Connection connection) throws SQLException {
    this.file = file;
    this.connection = connection;
    this.readings = new ReadingTable(connection);
    this.log = new RunLog(connection);
    this.delivered = new DeliveredBook(connection);
    this.judge = new StampJudge(readings, log);
    this.runs = new RunTable(connection, readings, judge);
    this.opened = FileMark.of(file);
    this.transactions = new Transactions(file, connection, this::beforeRollback);
  }

  private void beforeRollback() throws SQLException {
    readings.forget();
    delivered.forget();
  }

  /**
   * Opens a store, making it or bringing it to the present schema if need be.
   *
   * @throws MistakeException if the file is not a store or cannot be written
   */
  public static Store open(Path file) {
    return Opening.orMake(file, Store::new);
  }

  /**
   * Opens a store that must exist, to change something in it.
   *
   * @throws MistakeException if there is none at that path, or it cannot be written
   */
  public static Store openExistingToWrite(Path file) {
    return Opening.existingToWrite(file, Store::new);
  }

  /**
   * Opens a store that must exist, to read it; one that may only be read is opened too.
   *
   * @throws MistakeException if there is none at that path
   */
  public static Store openExisting(Path file) {
    return Opening.existing(file, Store::new);
  }

  /** The database file. */
  public Path file() {
    return file;
  }

  /** Whether another file, or none, has taken the place of the one that was opened. */
  public boolean isReplaced() {
    return !opened.equals(FileMark.of(file));
  }

  /**
   * A number that is another one once somebody else has changed anything in the database. What this
   * instance stores does not count.
   */
  public long changesByOthers() {
    return transactions.read(() -> (long) Schema.pragma(connection, "data_version"));
  }

  /** Does several things in one commit: all of it is stored, or nothing. */
  public void inOneCommit(Runnable work) {
    transactions.change(work::run);
  }

  /** Begins a run and returns its number. */
  public long beginRun(RigFile rig, long startMs) {
    return beginRun(rig, startMs, OptionalLong.empty());
  }

  /** Begins a run that goes on from another, cut or broken off; returns its number. */
  public long beginRun(RigFile rig, long startMs, OptionalLong follows) {
    return transactions.write(() -> runs.begin(rig, startMs, follows));
  }

  /** Ends a run. */
  public void endRun(long run, long endMs) {
    transactions.change(() -> runs.end(run, endMs));
  }

  /**
   * Stores readings in one commit. A reading with channel, time and value of one already there is a
   * duplicate and passed over. Of two that differ in value only, the first stays if the probe gave
   * the time; if the time is that of arrival both stay, the later one at the next free millisecond.
   *
   * @throws StoreBlockedException if the database cannot be written now; nothing is stored then
   */
  public Appended append(long run, List<Reading> batch) {
    return transactions.write(() -> readings.append(run, batch));
  }

  /** Whether a run holds a reading of this channel, time and value; a look-up by key. */
  public boolean holds(long run, Reading reading) {
    return transactions.read(() -> readings.holds(run, reading));
  }

  /** Keeps marks of messages whose readings are stored; of each session the latest. */
  public void addDelivered(List<MessageMark> marks) {
    transactions.change(() -> delivered.add(marks));
  }

  /** The marks kept of a session, those of the earlier messages first. */
  public List<MessageMark> delivered(String session) {
    return transactions.read(() -> delivered.of(session));
  }

  /** Keeps no mark of a session any more: its sender began it anew. */
  public void removeDelivered(String session) {
    transactions.change(() -> delivered.remove(session));
  }

  /**
   * The latest runs of a rig that were begun before a run: those of the same site and name of rig
   * file, of which some channel gets its readings the same way. At most {@value #MOST_EARLIER_RUNS}
   * are looked at.
   */
  public List<FedAlike> earlierOfRig(RigFile rig, long run) {
    return transactions.read(() -> new RigHistory(connection).of(rig, run));
  }

  /**
   * The name of the rig file that a run was begun with, as it was given then.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public String rigName(long run) {
    return runRow(run).rigName();
  }

  /**
   * The same without folders: they are others by hand and as a service.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public String rigFileName(long run) {
    return UnnamedSite.fileName(rigName(run));
  }

  /** A run holds a reading that arrived before its beginning: it began then. */
  public void beganAt(long run, long beganMs) {
    transactions.change(() -> runs.beganAt(run, beganMs));
  }

  /** Records an event and returns its number. */
  public long addEvent(
      long run,
      EventKind kind,
      String subject,
      long startMs,
      OptionalLong endMs,
      long count,
      String text) {
    return transactions.write(() -> log.addEvent(run, kind, subject, startMs, endMs, count, text));
  }

  /** Brings an event up to date: it is over, or happened more often. */
  public void updateEvent(long event, OptionalLong endMs, long count, String text) {
    transactions.change(() -> log.updateEvent(event, endMs, count, text));
  }

  /** Ends every event of a run that still lasts. */
  public void endEvents(long run, long endMs) {
    transactions.change(() -> log.endEvents(run, endMs));
  }

  /**
   * Adds a note to a run.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public void addNote(long run, long timeMs, String text) {
    requireRun(run);
    transactions.change(() -> log.addNote(run, timeMs, text));
  }

  /** The runs, the oldest first. */
  public List<RunSummary> runs() {
    return transactions.inOneView(
        () -> {
          List<RunSummary> counted = new ArrayList<>();
          for (RunHeading one : runs.headings()) {
            counted.add(
                new RunSummary(
                    one.id(),
                    one.site(),
                    one.shown(),
                    one.startMs(),
                    one.endMs(),
                    readings.count(one.id())));
          }
          return counted;
        });
  }

  /** The runs, the oldest first, without counting their readings: fast, however many there are. */
  public List<RunHeading> runHeadings() {
    return transactions.inOneView(runs::headings);
  }

  /** Runs that have not been ended, the oldest first: being recorded, or left by a crash. */
  public List<Long> runsWithoutEnd() {
    return transactions.read(runs::withoutEnd);
  }

  /** Number of readings of a run. */
  public long readingCount(long run) {
    return transactions.read(() -> readings.count(run));
  }

  /** Earliest stamp of a run, UTC milliseconds, also one that cannot be right. */
  public OptionalLong firstReadingMs(long run) {
    return transactions.read(() -> readings.firstMs(run));
  }

  /** Latest stamp of a run, UTC milliseconds, also one that cannot be right. */
  public OptionalLong lastReadingMs(long run) {
    return transactions.read(() -> readings.lastMs(run));
  }

  /**
   * The last moment of a run: the time of its last reading whose stamp can be right, or of its
   * beginning if it has none.
   */
  public long lastMomentMs(long run) {
    RunRow row = runRow(run);
    return transactions.read(
        () -> {
          StampWindow window =
              judge.window(run, row.beganMs(), row.endedMs(), System.currentTimeMillis());
          return readings.lastMs(run, window.untilMs()).orElse(row.beganMs());
        });
  }

  /** When the recorder began a run, UTC milliseconds. */
  public long beganMs(long run) {
    return runRow(run).beganMs();
  }

  /**
   * The rig file that a run was begun with, as written.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public String rigText(long run) {
    return runRow(run).rigText();
  }

  /**
   * Loads a run as far as it has been recorded. It spans its readings, but for those whose stamps
   * cannot be right; without any, the time it was recorded.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public Recording load(long run) {
    return follow(run).read();
  }

  /**
   * Follows a run: each look at it reads little more than what has come in since the one before.
   */
  public RunFollower follow(long run) {
    return new RunFollower(this, transactions, readings, log, judge, run);
  }

  /**
   * Shows all readings of a run in order of time, those of one time in no certain order.
   *
   * @throws MistakeException naming the runs there are, if this is none
   */
  public void forEachReading(long run, ReadingVisitor visitor) {
    requireRun(run);
    transactions.read(
        () -> {
          readings.visit(run, Long.MIN_VALUE, Long.MAX_VALUE, visitor);
          return null;
        });
  }

  private void requireRun(long run) {
    runRow(run);
  }

  RunRow runRow(long run) {
    return transactions
        .read(() -> runs.find(run))
        .orElseThrow(() -> new MistakeException(file + ": has no run " + run + "; " + knownRuns()));
  }

  private String knownRuns() {
    List<RunSummary> runs = runs();
    if (runs.isEmpty()) {
      return "it holds none yet";
    }
    int shown = 20;
    String ids =
        runs.stream()
            .skip(Math.max(0, runs.size() - shown))
            .map(run -> Long.toString(run.id()))
            .collect(Collectors.joining(", "));
    return (runs.size() > shown ? "its newest runs are " : "its runs are ") + ids;
  }

  @Override
  public void close() {
    try {
      readings.close();
      delivered.close();
      transactions.close();
      connection.close();
    } catch (SQLException e) {
      throw SqlFault.of(file, e);
    }
  }
}
