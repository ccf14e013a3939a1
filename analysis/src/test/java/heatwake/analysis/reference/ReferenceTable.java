package heatwake.analysis.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Published or independently computed values in a CSV beside the tests; each row names its source.
 */
public final class ReferenceTable {
  private ReferenceTable() {}

  /** One row by column name. */
  public record Row(Map<String, String> cells) {
    public String text(String column) {
      return Objects.requireNonNull(cells.get(column), () -> "no column " + column);
    }

    public boolean has(String column) {
      return !text(column).isEmpty();
    }

    public double number(String column) {
      return Double.parseDouble(text(column));
    }
  }

  /** Reads a table from the test resources, for instance {@code water/water_density_cp.csv}. */
  public static List<Row> read(String name) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    ReferenceTable.class.getResourceAsStream("/heatwake/analysis/" + name), name),
                StandardCharsets.UTF_8))) {
      List<String> header = cells(reader.readLine());
      List<Row> rows = new ArrayList<>();
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        List<String> cells = cells(line);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
          row.put(header.get(i), cells.get(i));
        }
        rows.add(new Row(row));
      }
      if (rows.isEmpty()) {
        throw new IllegalStateException(name + " has no rows");
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
