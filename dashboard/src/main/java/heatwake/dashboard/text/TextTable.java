package heatwake.dashboard.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A table for a terminal, each column as wide as its widest cell. The second column, which says
 * what the line is about, stands at the left; numbers stand at the right.
 */
final class TextTable {
  private static final int TITLE_COLUMN = 1;
  private static final String GAP = "  ";

  private final List<String[]> rows = new ArrayList<>();

  TextTable(String... heads) {
    rows.add(heads);
  }

  void add(String... cells) {
    rows.add(cells);
  }

  /** Its lines, the heads first. */
  List<String> lines() {
    int[] widths = new int[rows.get(0).length];
    for (String[] row : rows) {
      for (int column = 0; column < widths.length; column++) {
        widths[column] = Math.max(widths[column], row[column].length());
      }
    }
    return rows.stream().map(row -> line(row, widths)).toList();
  }

  private static String line(String[] row, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int column = 0; column < widths.length; column++) {
      String filling = " ".repeat(widths[column] - row[column].length());
      line.append(GAP)
          .append(column == TITLE_COLUMN ? row[column] + filling : filling + row[column]);
    }
    return line.toString().stripTrailing();
  }
}
