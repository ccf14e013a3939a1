package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.clock.ClockStep;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.Appended;
import heatwake.collector.store.Store;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/** A run being recorded: what its sources deliver to. */
public final class RecordedRun implements Intake {
  private final Recorder recorder;
  private final RigFile rig;
  private final RunTime time;
  private final RecorderClock clock;
  private final ReadingGate gate;
  private final ProbeWatches watches;
  private final SourceStates sources;
  private final RunEvents events = new RunEvents();
  private Appending appending;
  private Appending following;

  /** When the last of what was passed had been handed in. */
  private long passedMs;

  private volatile long id;
  private volatile long beganMs;
  private final AtomicLong stored = new AtomicLong();
  private volatile Map<Channel, Reading> latest = Map.of();
  private volatile boolean over;

  RecordedRun(Recorder recorder, RigFile rig, RecorderClock clock, RunTime time) {
    this.recorder = recorder;
    this.rig = rig;
    this.time = time;
    this.clock = clock;
    this.sources = new SourceStates(rig, time.nowMs());
    this.gate = new ReadingGate();
    this.watches = new ProbeWatches(rig, clock);
  }

  /** Number of the run in its store; another after it was cut. */
  public long id() {
    return id;
  }

  /** The rig it is recorded with. */
  public RigFile rig() {
    return rig;
  }

  /** When it began, UTC milliseconds. */
  public long beganMs() {
    return beganMs;
  }

  /** Readings stored in it so far. */
  public long stored() {
    return stored.get();
  }

  /** The latest reading of each channel, as of the last commit. */
  public Map<Channel, Reading> latest() {
    return latest;
  }

  /** Which of its sources can be reached, in the order of the rig. */
  public List<SourceState> sources() {
    return sources.all();
  }

  /** The channels of which nothing has come for too long. */
  public Set<Channel> silent() {
    return watches.silent();
  }

  @Override
  public long nowMs() {
    return time.nowMs();
  }

  @Override
  public void deliver(Delivery delivery) throws InterruptedException {
    long arrivedMs = time.nowMs();
    List<ProbeWatches.Heard> changes = watches.heard(delivery.readings());
    if (!changes.isEmpty()) {
      events.add(book -> watches.tell(changes, arrivedMs, book));
    }
    recorder.take(this, delivery, arrivedMs);
  }

  @Override
  public void happened(EventKind kind, String subject, String text) {
    happened(kind, subject, text, 1);
  }

  /** Memory is full: a source waits to hand in what it has. */
  void heldUp() {
    watches.heldUp();
  }

  void stepped(ClockStep step) {
    events.add(book -> book.single(EventKind.CLOCK_STEP, "clock", step.atMs(), step.text()));
  }

  void happened(EventKind kind, String subject, String text, long times) {
    events.add(book -> book.happened(kind, subject, time.nowMs(), () -> text, times));
  }

  @Override
  public void began(EventKind kind, String subject, String text) {
    events.add(book -> book.began(kind, subject, time.nowMs(), text));
    if (kind == EventKind.SOURCE_LOST) {
      sources.lost(subject, EventBook.line(text), time.nowMs(), clock.monotonicNs());
    }
  }

  @Override
  public void ended(EventKind kind, String subject) {
    events.add(book -> book.ended(kind, subject, time.nowMs()));
    if (kind == EventKind.SOURCE_LOST) {
      sources.back(subject, time.nowMs());
    }
  }

  @Override
  public List<MessageMark> delivered(String session) {
    return recorder.delivered(session);
  }

  @Override
  public void sessionIsNew(String session) throws InterruptedException {
    recorder.sessionIsNew(session);
  }

  /** Ends the run once all that was delivered is stored. */
  public void end() {
    recorder.end(this);
  }

  // What follows is for the writer thread.

  void begin(Store store, OptionalLong follows) {
    beganMs = time.nowMs();
    id = store.beginRun(rig, beganMs, follows);
    appending = new Appending(id, beganMs, EarlierRuns.before(store, rig, id));
  }

  boolean isOver() {
    return over;
  }

  /** Adds those of some readings that are to be stored, as they are to be. */
  void pass(List<Reading> readings, long arrivedMs, List<Reading> passed) {
    passedMs = Math.max(passedMs, arrivedMs);
    events.add(book -> gate.pass(readings, arrivedMs, book, passed));
  }

  void look() {
    events.add(book -> watches.look(time.nowMs(), book));
  }

  boolean hasNews() {
    return events.isChanged();
  }

  /** Writes readings and events into the commit under way. */
  void write(Store store, List<Reading> readings) {
    appending.write(store, readings);
    events.write(store, id);
  }

  /** The commit is done. */
  void confirm() {
    Appended appended = appending.confirm();
    events.confirm(book -> tellOdd(appended, book));
    stored.addAndGet(appended.stored());
    latest = gate.latest();
  }

  private void tellOdd(Appended appended, EventBook book) {
    // Not by the readings' stamps, which may be years off: events are gathered by their times.
    for (Reading reading : appended.duplicates()) {
      book.happened(
          EventKind.DUPLICATE,
          reading.channel().id(),
          passedMs,
          () -> reading.channel() + " came again with time and value of one already stored");
    }
    for (Reading reading : appended.conflicts()) {
      book.happened(
          EventKind.TIME_CONFLICT,
          reading.channel().id(),
          passedMs,
          () -> reading.channel() + " gave two values for one time; the first was kept");
    }
  }

  /** Writes the end of the run into the commit under way. */
  void writeEnd(Store store, String why) {
    long nowMs = time.nowMs();
    if (!over) {
      over = true;
      events.end(nowMs, why);
    }
    events.write(store, id);
    store.endRun(id, nowMs);
  }

  /** Writes the end of the run and the beginning of the one that follows it. */
  void writeCut(Store store) {
    long nowMs = time.nowMs();
    events.cut(id, nowMs);
    events.write(store, id);
    store.endRun(id, nowMs);
    long next = store.beginRun(rig, nowMs, OptionalLong.of(id));
    following = new Appending(next, nowMs, appending.earlier().and(store, rig, id));
  }

  /** The cut is committed: from here on all goes into the run that follows. */
  void confirmCut() {
    events.confirmCut();
    appending = following;
    id = following.run();
    beganMs = following.beganMs();
    stored.set(0);
  }
}
