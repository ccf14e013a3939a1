package heatwake.collector.probe;

import heatwake.analysis.series.EventKind;
import java.util.List;

/** Where sources hand in what they get. Safe to call from any thread. */
public interface Intake {
  /** The moment to stamp an arriving reading with, UTC milliseconds. */
  long nowMs();

  /**
   * Takes readings for storage. Blocks briefly when the writer cannot keep up, which is the
   * back-pressure a source should pass on to its peer.
   */
  void deliver(Delivery delivery) throws InterruptedException;

  /**
   * Something happened once, now. Repeats of one kind on one subject are gathered into one event
   * with a count.
   *
   * @param subject source or channel it happened to
   * @param text what a person should read, with the offending text shortened
   */
  void happened(EventKind kind, String subject, String text);

  /** A condition began and lasts, until {@link #ended} is called with the same kind and subject. */
  void began(EventKind kind, String subject, String text);

  /** A condition is over; does nothing if it had not begun. */
  void ended(EventKind kind, String subject);

  /** The marks stored of a session, those of the earlier messages first. */
  List<MessageMark> delivered(String session);

  /**
   * A sender began a session anew: what is known of the old one means nothing now. Returns when
   * that is on disk, or after a while if it cannot be brought there.
   */
  void sessionIsNew(String session) throws InterruptedException;
}
