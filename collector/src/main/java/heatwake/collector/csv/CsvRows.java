package heatwake.collector.csv;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import heatwake.collector.mistake.MistakeException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The rows of a CSV file, checked one by one; every mistake names file, line and mend. */
final class CsvRows implements AutoCloseable {
  private static final int LONGEST_QUOTE = 40;

  /**
   * One row.
   *
   * @param line line it begins on
   * @param timeMs UTC milliseconds
   * @param values one a column, in its unit; empty where the cell is
   */
  record Row(long line, long timeMs, List<OptionalDouble> values) {}

  private final String name;
  private final CloseableIterator<CsvRecord> records;
  private final List<CsvHeader.Column> columns;
  private long line = 1;

  private CsvRows(Path file, Reader in) {
    this.name = file.toString();
    this.records =
        CsvReader.builder()
            .skipEmptyLines(true)
            .ignoreDifferentFieldCount(true)
            .acceptCharsAfterQuotes(false)
            .ofCsvRecord(in)
            .iterator();
    this.columns = header();
  }

  /**
   * Opens a file and reads its header.
   *
   * @throws MistakeException naming file, line and mend
   */
  static CsvRows open(Path file) {
    if (Files.isDirectory(file)) {
      throw new MistakeException(file + ": is a folder; name a CSV file");
    }
    try {
      return new CsvRows(file, reader(file));
    } catch (NoSuchFileException e) {
      throw new MistakeException(file + ": no such file; check the path of the CSV", e);
    } catch (IOException e) {
      throw new MistakeException(file + ": cannot be read (" + e.getMessage() + ")", e);
    }
  }

  /** Bytes that are not UTF-8 become a mark that no number, time or channel contains. */
  private static Reader reader(Path file) throws IOException {
    BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPLACE)
                    .onUnmappableCharacter(CodingErrorAction.REPLACE)),
            1 << 16);
    in.mark(1);
    if (in.read() != '\uFEFF') {
      in.reset();
    }
    return in;
  }

  /** The columns of readings, in order. */
  List<CsvHeader.Column> columns() {
    return columns;
  }

  /** The next row, if there is one. */
  Optional<Row> next() {
    return record().map(this::row);
  }

  private List<CsvHeader.Column> header() {
    CsvRecord header =
        record().orElseThrow(() -> mistake("the file is empty; its first line is the header"));
    try {
      return CsvHeader.read(header.getFields());
    } catch (IllegalArgumentException e) {
      throw mistake(e.getMessage());
    }
  }

  private Optional<CsvRecord> record() {
    try {
      if (!records.hasNext()) {
        return Optional.empty();
      }
      CsvRecord record = records.next();
      line = record.getStartingLineNumber();
      return Optional.of(record);
    } catch (CsvParseException e) {
      line++;
      throw mistake(
          isTooLong(e)
              ? "broken row: a cell is far too long; is a quote not closed?"
              : "broken row (" + e.getMessage() + "); check its quotes and its length");
    } catch (UncheckedIOException e) {
      throw new MistakeException(name + ": cannot be read (" + e.getMessage() + ")", e);
    }
  }

  /** The reader's own limit: a quote that is never closed makes a cell of all the rest. */
  private static boolean isTooLong(CsvParseException fault) {
    return Stream.iterate((Throwable) fault, cause -> cause != null, Throwable::getCause)
        .anyMatch(one -> one.getMessage() != null && one.getMessage().contains("maximum"));
  }

  private Row row(CsvRecord record) {
    if (record.getFieldCount() != columns.size() + 1) {
      throw mistake(
          "broken row: "
              + record.getFieldCount()
              + " cells where the header has "
              + (columns.size() + 1)
              + "; check commas and quotes");
    }
    try {
      List<OptionalDouble> values = new ArrayList<>(columns.size());
      long timeMs = CsvTime.parse(record.getField(0));
      for (int i = 0; i < columns.size(); i++) {
        values.add(value(record.getField(i + 1), columns.get(i)));
      }
      return new Row(line, timeMs, values);
    } catch (IllegalArgumentException e) {
      throw mistake(e.getMessage());
    }
  }

  private static OptionalDouble value(String cell, CsvHeader.Column column) {
    if (cell.isBlank()) {
      return OptionalDouble.empty();
    }
    try {
      return OptionalDouble.of(CsvNumber.parse(cell));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(column.heading() + ": " + e.getMessage(), e);
    }
  }

  /** A mistake at a row. */
  MistakeException mistakeAt(Row row, String message) {
    return MistakeException.at(name, row.line(), message);
  }

  /** A mistake at the row read last. */
  MistakeException mistake(String message) {
    return MistakeException.at(name, line, message);
  }

  /** Offending text as it may be repeated in a message. */
  static String shortened(String text) {
    String clean = text.replaceAll("\\p{Cntrl}", " ");
    return clean.length() <= LONGEST_QUOTE ? clean : clean.substring(0, LONGEST_QUOTE) + "...";
  }

  @Override
  public void close() {
    try {
      records.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
