package heatwake.collector.csv;

import heatwake.analysis.series.EventKind;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** Rows of a file whose stamps leap and do not hold for the rows after them. */
final class StrayRows {
  private final List<Stray> rows = new ArrayList<>();

  /**
   * One of them.
   *
   * @param placeMs the run's time where it stands in the file
   */
  record Stray(CsvRows.Row row, long placeMs) {}

  void add(CsvRows.Row row, long placeMs) {
    rows.add(new Stray(row, placeMs));
  }

  boolean isEmpty() {
    return rows.isEmpty();
  }

  /** They, in the order of the file. */
  List<Stray> all() {
    return rows;
  }

  /** What a person is told of them; not to be asked where there are none. */
  String inWords() {
    CsvRows.Row first = rows.get(0).row();
    return String.format(
        rows.size() == 1
            ? "%d row stamped more than a day from those about it (line %d: %s); kept at its own"
                + " time and exported, but left out of the run's span and the analysis"
            : "%d rows stamped more than a day from those about them (first line %d: %s); kept at"
                + " their own times and exported, but left out of the run's span and the analysis",
        rows.size(),
        first.line(),
        CsvTime.format(first.timeMs()));
  }

  /** By this event the store knows that what lies outside the run's other rows is wrong. */
  void report(Store store, long run) {
    if (!rows.isEmpty()) {
      store.addEvent(
          run,
          EventKind.TIME_REFUSED,
          "time",
          rows.get(0).placeMs(),
          OptionalLong.of(rows.get(rows.size() - 1).placeMs()),
          rows.size(),
          inWords());
    }
  }
}
