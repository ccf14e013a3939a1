package heatwake.collector.probe;

import java.util.List;
import java.util.Optional;

/**
 * Readings that came together, and what to do once they are safely on disk.
 *
 * @param readings in the order in which they came
 * @param whenDurable called once after the commit that holds them, on the recorder's writer thread;
 *     a source that owes somebody an acknowledgement gives it here. Must not block.
 * @param mark what the message they came in is known again by; kept with the readings where these
 *     cannot tell themselves that they were stored before
 */
public record Delivery(List<Reading> readings, Runnable whenDurable, Optional<MessageMark> mark) {
  private static final Runnable NOBODY_WAITS = Delivery::nobodyWaits;

  public Delivery {
    readings = List.copyOf(readings);
  }

  /** Readings of which each can tell by itself whether it was stored before, or that come once. */
  public Delivery(List<Reading> readings, Runnable whenDurable) {
    this(readings, whenDurable, Optional.empty());
  }

  private static void nobodyWaits() {}

  /** Readings that nobody waits to have acknowledged. */
  public static Delivery of(List<Reading> readings) {
    return new Delivery(readings, NOBODY_WAITS);
  }

  /**
   * Whether somebody waits for the acknowledgement; then the sender keeps the readings until it
   * comes and can be made to wait.
   */
  public boolean isAwaited() {
    return whenDurable != NOBODY_WAITS;
  }
}
