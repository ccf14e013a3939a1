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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/** A run being recorded: what its sources deliver to. */
public final class RecordedRun implements Intake {
  private static final String RECORDER = "recorder";

  private final Recorder recorder;
  private final RigFile rig;
  private final RunTime time;
  private final RecorderClock clock;
  private final ReadingGate gate;
  private final ProbeWatches watches;
  private final SourceStates sources;
  private final Object eventsLock = new Object();
  private EventBook events = new EventBook();
  private EventBook following;
  private long followingId;
  private long followingBeganMs;
  private EarlierRuns followingEarlier = EarlierRuns.NONE;
  private EarlierRuns earlier = EarlierRuns.NONE;

  /** The beginning in the store: not later than the first arrival, whatever cuts go by. */
  private long storedBeganMs;

  private long unconfirmedBeganMs = Long.MAX_VALUE;

  /** When the last of what was passed had been handed in. */
  private long passedMs;

  private volatile long id;
  private volatile long beganMs;
  private final AtomicLong stored = new AtomicLong();
  private volatile Map<Channel, Reading> latest = Map.of();
  private volatile boolean over;
  private List<EventBook.Written> unconfirmed = List.of();
  private Appended appended = Appended.NOTHING;

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
      synchronized (eventsLock) {
        watches.tell(changes, arrivedMs, book());
      }
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
    synchronized (eventsLock) {
      book().single(EventKind.CLOCK_STEP, "clock", step.atMs(), step.text());
    }
  }

  void happened(EventKind kind, String subject, String text, long times) {
    synchronized (eventsLock) {
      book().happened(kind, subject, time.nowMs(), () -> text, times);
    }
  }

  @Override
  public void began(EventKind kind, String subject, String text) {
    synchronized (eventsLock) {
      book().began(kind, subject, time.nowMs(), text);
    }
    if (kind == EventKind.SOURCE_LOST) {
      sources.lost(subject, EventBook.line(text), time.nowMs(), clock.monotonicNs());
    }
  }

  @Override
  public void ended(EventKind kind, String subject) {
    synchronized (eventsLock) {
      book().ended(kind, subject, time.nowMs());
    }
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
    storedBeganMs = beganMs;
    id = store.beginRun(rig, beganMs, follows);
    earlier = EarlierRuns.before(store, rig, id);
  }

  boolean isOver() {
    return over;
  }

  /** Adds those of some readings that are to be stored, as they are to be. */
  void pass(List<Reading> readings, long arrivedMs, List<Reading> passed) {
    passedMs = Math.max(passedMs, arrivedMs);
    synchronized (eventsLock) {
      gate.pass(readings, arrivedMs, book(), passed);
    }
  }

  void look() {
    synchronized (eventsLock) {
      watches.look(time.nowMs(), book());
    }
  }

  boolean hasNews() {
    synchronized (eventsLock) {
      return events.isChanged();
    }
  }

  /** Writes readings and events into the commit under way. */
  void write(Store store, List<Reading> readings) {
    appended = readings.isEmpty() ? Appended.NOTHING : append(store, readings);
    synchronized (eventsLock) {
      unconfirmed = events.write(store, id);
    }
  }

  private Appended append(Store store, List<Reading> readings) {
    List<Reading> duplicates = new ArrayList<>();
    List<Reading> news = earlier.without(store, readings, duplicates);
    Appended now = store.append(id, news);
    duplicates.addAll(now.duplicates());
    long arrivedMs =
        news.stream()
            .filter(one -> !one.stampedByProbe())
            .mapToLong(Reading::timeMs)
            .min()
            .orElse(storedBeganMs);
    if (arrivedMs < storedBeganMs) {
      // It arrived before the cut and waited for this commit.
      store.beganAt(id, arrivedMs);
      unconfirmedBeganMs = arrivedMs;
    }
    return new Appended(now.stored(), duplicates, now.conflicts());
  }

  /** The commit is done. */
  void confirm() {
    storedBeganMs = Math.min(storedBeganMs, unconfirmedBeganMs);
    unconfirmedBeganMs = Long.MAX_VALUE;
    synchronized (eventsLock) {
      events.confirm(unconfirmed);
      unconfirmed = List.of();
      // Not by the readings' stamps, which may be years off: events are gathered by their times.
      for (Reading reading : appended.duplicates()) {
        events.happened(
            EventKind.DUPLICATE,
            reading.channel().id(),
            passedMs,
            () -> reading.channel() + " came again with time and value of one already stored");
      }
      for (Reading reading : appended.conflicts()) {
        events.happened(
            EventKind.TIME_CONFLICT,
            reading.channel().id(),
            passedMs,
            () -> reading.channel() + " gave two values for one time; the first was kept");
      }
    }
    stored.addAndGet(appended.stored());
    appended = Appended.NOTHING;
    latest = gate.latest();
  }

  /** Writes the end of the run into the commit under way. */
  void writeEnd(Store store, String why) {
    long nowMs = time.nowMs();
    synchronized (eventsLock) {
      if (!over) {
        over = true;
        events.endAll(nowMs);
        events.happened(EventKind.RECORDER_STOPPED, RECORDER, nowMs, () -> why);
      }
      events.write(store, id);
    }
    store.endRun(id, nowMs);
  }

  /** Writes the end of the run and the beginning of the one that follows it. */
  void writeCut(Store store) {
    long nowMs = time.nowMs();
    synchronized (eventsLock) {
      if (following == null) {
        following = events.endAll(nowMs);
        events.happened(EventKind.RECORDER_STOPPED, RECORDER, nowMs, () -> "the run was cut here");
        String before = "goes on from run " + id;
        following.happened(EventKind.RECORDER_STARTED, RECORDER, nowMs, () -> before);
      }
      events.write(store, id);
    }
    store.endRun(id, nowMs);
    followingId = store.beginRun(rig, nowMs, OptionalLong.of(id));
    followingBeganMs = nowMs;
    followingEarlier = earlier.and(store, rig, id);
  }

  /** The cut is committed: from here on all goes into the run that follows. */
  void confirmCut() {
    synchronized (eventsLock) {
      events = following;
      following = null;
      id = followingId;
      beganMs = followingBeganMs;
      storedBeganMs = followingBeganMs;
      earlier = followingEarlier;
      stored.set(0);
    }
  }

  /** Where events go now: while a cut is being committed, already to the run that follows. */
  private EventBook book() {
    return following == null ? events : following;
  }
}
