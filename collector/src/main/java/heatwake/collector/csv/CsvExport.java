package heatwake.collector.csv;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import heatwake.analysis.quantity.Channel;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Writes a run as CSV: exactly what {@link CsvImport} reads. Every value is written with as many
 * digits as it takes to read the same bits again.
 */
public final class CsvExport {
  private final CsvWriter out;
  private final List<Channel> channels;
  private final String[] cells;
  private boolean rowOpen;
  private long rowMs;

  private CsvExport(CsvWriter out, Set<Channel> channels) {
    this.out = out;
    this.channels = new ArrayList<>(channels);
    this.cells = new String[channels.size() + 1];
  }

  /**
   * Writes a run.
   *
   * @param writer left open
   * @throws MistakeException if there is no such run
   */
  public static void write(Store store, long run, Writer writer) {
    Set<Channel> channels = EnumSet.noneOf(Channel.class);
    store.forEachReading(run, (channel, timeMs, value) -> channels.add(channel));
    CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(writer);
    CsvExport export = new CsvExport(csv, channels);
    export.header();
    store.forEachReading(run, export::reading);
    export.endRow();
    export.flush();
  }

  private void header() {
    List<String> headings = new ArrayList<>();
    headings.add(CsvHeader.TIME);
    for (Channel channel : channels) {
      headings.add(new CsvHeader.Column(channel, channel.storedUnit()).heading());
    }
    out.writeRecord(headings);
    Arrays.fill(cells, "");
  }

  private void reading(Channel channel, long timeMs, double value) {
    if (rowOpen && timeMs != rowMs) {
      endRow();
    }
    int column = channels.indexOf(channel);
    if (column < 0) {
      // Its first reading came while the export was under way.
      return;
    }
    rowOpen = true;
    rowMs = timeMs;
    cells[column + 1] = Double.toString(value);
  }

  private void endRow() {
    if (rowOpen) {
      cells[0] = CsvTime.format(rowMs);
      out.writeRecord(cells);
      Arrays.fill(cells, "");
      rowOpen = false;
    }
  }

  private void flush() {
    try {
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
