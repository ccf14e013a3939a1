package heatwake.collector.store;

import heatwake.collector.probe.Reading;
import java.util.List;

/**
 * What became of readings handed to a store.
 *
 * @param stored readings stored now
 * @param duplicates readings that were there already, with the same time and value
 * @param conflicts readings not stored, because one of the same channel and probe-given time with
 *     another value was there first
 */
public record Appended(int stored, List<Reading> duplicates, List<Reading> conflicts) {
  /** Nothing was handed over. */
  public static final Appended NOTHING = new Appended(0, List.of(), List.of());

  public Appended {
    duplicates = List.copyOf(duplicates);
    conflicts = List.copyOf(conflicts);
  }
}
