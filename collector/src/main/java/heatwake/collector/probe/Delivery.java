package heatwake.collector.probe;

import java.util.List;

/**
 * Readings that came together, and what to do once they are safely on disk.
 *
 * @param readings in the order in which they came
 * @param whenDurable called once after the commit that holds them, on the recorder's writer thread;
 *     a source that owes somebody an acknowledgement gives it here. Must not block.
 */
public record Delivery(List<Reading> readings, Runnable whenDurable) {
  public Delivery {
    readings = List.copyOf(readings);
  }

  /** Readings that nobody waits to have acknowledged. */
  public static Delivery of(List<Reading> readings) {
    return new Delivery(readings, () -> {});
  }
}
