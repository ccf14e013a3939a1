package heatwake.collector.frame;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Rows of values, set apart by semicolon, tab or comma (RFC 4180 otherwise). A column is named by
 * its heading, or by its number, the first being 1. A heading may come again, as it does when a
 * device restarts. A row with another number of columns than the rows before lost some on the way
 * and is not trusted, unless several in a row agree that the device has changed.
 */
final class CsvLines implements LineDecoder {
  /** So many rows in a row with a new number of columns are a changed device, not noise. */
  private static final int CONVINCING = 3;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,3}");

  private final boolean needsHeading;
  private Map<String, Integer> heading = Map.of();
  private int columns;
  private int otherColumns;
  private int othersInARow;

  CsvLines(Set<String> fields) {
    needsHeading = fields.stream().anyMatch(field -> !NUMBER.matcher(field).matches());
  }

  @Override
  public Line decode(String text) {
    List<String> cells = cells(text);
    if (cells.isEmpty()) {
      return new Line.Garbage("not a row of values");
    }
    if (isHeading(cells)) {
      columns = cells.size();
      heading = new LinkedHashMap<>();
      for (int i = 0; i < cells.size(); i++) {
        heading.putIfAbsent(cells.get(i).strip(), i);
      }
      return new Line.Heading();
    }
    if (!hasUsualColumns(cells.size())) {
      return new Line.Garbage("a row of " + cells.size() + ", not " + columns + " columns");
    }
    if (needsHeading && heading.isEmpty()) {
      return new Line.Garbage(
          "no heading has come yet to tell its columns apart; name them by number in the rig, the"
              + " first is 1");
    }
    return new Line.Fields(new Row(cells, heading), Optional.empty());
  }

  private static List<String> cells(String text) {
    char separator = text.indexOf(';') >= 0 ? ';' : text.indexOf('\t') >= 0 ? '\t' : ',';
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder().fieldSeparator(separator).ofCsvRecord(text)) {
      return reader.stream().findFirst().map(CsvRecord::getFields).orElse(List.of());
    } catch (CsvParseException notCsv) {
      return List.of();
    } catch (java.io.IOException impossible) {
      throw new IllegalStateException("a string cannot fail to be read", impossible);
    }
  }

  /** All cells are words: not one is a number, a time, a fault or blank. */
  private static boolean isHeading(List<String> cells) {
    return cells.stream()
        .allMatch(
            cell ->
                !cell.isBlank()
                    && Character.isLetter(cell.strip().codePointAt(0))
                    && cell.indexOf('\uFFFD') < 0
                    && !SentNumber.isFault(cell));
  }

  private boolean hasUsualColumns(int count) {
    if (columns == 0 || count == columns) {
      columns = count;
      othersInARow = 0;
      return true;
    }
    othersInARow = count == otherColumns ? othersInARow + 1 : 1;
    otherColumns = count;
    if (othersInARow < CONVINCING) {
      return false;
    }
    columns = count;
    othersInARow = 0;
    return true;
  }

  private record Row(List<String> cells, Map<String, Integer> heading) implements Message {
    @Override
    public Optional<String> field(String name) {
      Integer index =
          NUMBER.matcher(name).matches()
              ? Integer.valueOf(Integer.parseInt(name) - 1)
              : heading.get(name);
      return index == null || index < 0 || index >= cells.size() || cells.get(index).isBlank()
          ? Optional.empty()
          : Optional.of(cells.get(index).strip());
    }

    @Override
    public List<String> names() {
      return heading.isEmpty()
          ? IntStream.rangeClosed(1, cells.size()).mapToObj(String::valueOf).toList()
          : List.copyOf(heading.keySet());
    }
  }
}
