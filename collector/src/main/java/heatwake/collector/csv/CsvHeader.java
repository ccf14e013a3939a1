package heatwake.collector.csv;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.quantity.UnknownUnitException;
import heatwake.collector.mistake.NearestWord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The header of a CSV file: {@code time}, then {@code <channel> [<unit>]} for each column. */
final class CsvHeader {
  static final String TIME = "time";

  /** A column of readings. */
  record Column(Channel channel, Unit unit) {
    /** How it is written: {@code flow-heater [[gal_us]/min]}. */
    String heading() {
      return channel.id() + " [" + unit.code() + "]";
    }

    double toStored(double value) {
      return unit.to(channel.storedUnit(), value);
    }
  }

  private CsvHeader() {}

  /**
   * Reads the columns after {@code time}.
   *
   * @throws IllegalArgumentException saying what is wrong and the mend
   */
  static List<Column> read(List<String> cells) {
    if (cells.size() == 1 && (cells.get(0).indexOf(';') > 0 || cells.get(0).indexOf('\t') > 0)) {
      throw new IllegalArgumentException("cells must be divided by commas; save it so");
    }
    if (!cells.isEmpty() && cells.get(0).indexOf('\0') >= 0) {
      throw new IllegalArgumentException("not UTF-8 text but UTF-16; save it as CSV in UTF-8");
    }
    if (cells.isEmpty() || !cells.get(0).strip().equals(TIME)) {
      throw new IllegalArgumentException(
          "the first column must be called time; the header reads like: time,water-in [Cel]");
    }
    List<Column> columns = new ArrayList<>();
    for (String cell : cells.subList(1, cells.size())) {
      Column column = column(cell.strip());
      if (columns.stream().anyMatch(other -> other.channel() == column.channel())) {
        throw new IllegalArgumentException(
            "a second column for channel " + column.channel() + "; keep one");
      }
      columns.add(column);
    }
    if (columns.isEmpty()) {
      throw new IllegalArgumentException(
          "no channel after time; the header reads like: time,water-in [Cel]");
    }
    return columns;
  }

  private static Column column(String heading) {
    int open = heading.indexOf(" [");
    int close = heading.lastIndexOf(']');
    if (open < 1 || close < open) {
      throw new IllegalArgumentException(
          "column \"" + heading + "\" is not written <channel> [<unit>], like water-in [Cel]");
    }
    String id = heading.substring(0, open).strip();
    Channel channel =
        Channel.find(id)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "no channel is called \"" + id + "\"" + NearestWord.advice(id, ids())));
    try {
      return new Column(channel, Unit.of(channel.quantity(), heading.substring(open + 2, close)));
    } catch (UnknownUnitException e) {
      throw new IllegalArgumentException("column \"" + heading + "\": " + e.getMessage(), e);
    }
  }

  private static List<String> ids() {
    return Arrays.stream(Channel.values()).map(Channel::id).toList();
  }
}
