package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.store.Store;
import java.util.List;
import java.util.function.Consumer;

/**
 * The events of what is being recorded, over its cuts: while a cut is being committed, new ones
 * belong to the run that follows already. Safe to call from any thread.
 */
final class RunEvents {
  private static final String RECORDER = "recorder";

  private EventBook book = new EventBook();

  /** Null but while a cut is being committed. */
  private EventBook following;

  private List<EventBook.Written> unconfirmed = List.of();

  /** Adds events to the run they belong to now. */
  synchronized void add(Consumer<EventBook> events) {
    events.accept(following == null ? book : following);
  }

  /** Whether there is anything to write. */
  synchronized boolean isChanged() {
    return book.isChanged();
  }

  /** Writes what has changed into the commit under way. */
  synchronized void write(Store store, long run) {
    unconfirmed = book.write(store, run);
  }

  /** The commit is done; adds the events of what it showed, which are of the run it was made to. */
  synchronized void confirm(Consumer<EventBook> events) {
    book.confirm(unconfirmed);
    unconfirmed = List.of();
    events.accept(book);
  }

  /** Ends all that lasts, because the recording ends. */
  synchronized void end(long nowMs, String why) {
    book.endAll(nowMs);
    book.happened(EventKind.RECORDER_STOPPED, RECORDER, nowMs, () -> why);
  }

  /**
   * Ends all that lasts in a run that is cut; what lasts on goes on in the run that follows. Once
   * more, until it is confirmed, it changes nothing.
   */
  synchronized void cut(long run, long nowMs) {
    if (following == null) {
      following = book.endAll(nowMs);
      book.happened(EventKind.RECORDER_STOPPED, RECORDER, nowMs, () -> "the run was cut here");
      following.happened(
          EventKind.RECORDER_STARTED, RECORDER, nowMs, () -> "goes on from run " + run);
    }
  }

  /** The cut is committed. */
  synchronized void confirmCut() {
    book = following;
    following = null;
    unconfirmed = List.of();
  }
}
