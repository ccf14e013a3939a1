package heatwake.collector.csv;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** The rows of a CSV file one by one, with a few of those to come in view. */
final class RowsInView {
  private final CsvRows rows;
  private final int toCome;
  private final Deque<CsvRows.Row> view = new ArrayDeque<>();

  /**
   * Rows that have not been read yet.
   *
   * @param toCome how many of those to come are in view, while there are so many
   */
  RowsInView(CsvRows rows, int toCome) {
    this.rows = rows;
    this.toCome = toCome;
  }

  /** The next row, if there is one. */
  Optional<CsvRows.Row> next() {
    Optional<CsvRows.Row> read;
    do {
      read = rows.next();
      read.ifPresent(view::add);
    } while (read.isPresent() && view.size() <= toCome);
    return Optional.ofNullable(view.poll());
  }

  /** What the rows in view say that come after the one given last, UTC milliseconds. */
  List<Long> followingMs() {
    return view.stream().map(CsvRows.Row::timeMs).toList();
  }
}
