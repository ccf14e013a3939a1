package heatwake.collector.csv;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;

/** Times in CSV files: ISO-8601 with offset or Z, to the millisecond. */
final class CsvTime {
  /** Date and time as ISO-8601 has them, offset as +02:00, +0200, +02 or Z. */
  private static final DateTimeFormatter ISO =
      new DateTimeFormatterBuilder()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .parseLenient()
          .appendOffset("+HH:mm", "Z")
          .toFormatter();

  /** A logger whose clock was never set begins here; what is before is no clock's time. */
  private static final int EARLIEST_YEAR = 1970;

  /** As for the stamps of probes that are recorded. */
  private static final int LATEST_YEAR = 2099;

  private CsvTime() {}

  /**
   * Reads a time.
   *
   * @return UTC milliseconds; what is finer is cut off
   * @throws IllegalArgumentException saying the mend
   */
  static long parse(String text) {
    OffsetDateTime time;
    try {
      time = OffsetDateTime.parse(text.strip(), ISO);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "time \""
              + CsvRows.shortened(text)
              + "\" is not ISO-8601 with offset or Z; write it like 2031-05-04T18:00:00Z or"
              + " 2031-05-04T20:00:00+02:00",
          e);
    }
    if (time.getYear() < EARLIEST_YEAR || time.getYear() > LATEST_YEAR) {
      throw new IllegalArgumentException(
          "time \""
              + CsvRows.shortened(text)
              + "\" is in the year "
              + time.getYear()
              + "; years from 1970 to 2099 are read; correct the row or drop it");
    }
    return time.toInstant().toEpochMilli();
  }

  /** Writes a time in UTC, with milliseconds only where there are some. */
  static String format(long timeMs) {
    return Instant.ofEpochMilli(timeMs)
        .atOffset(ZoneOffset.UTC)
        .truncatedTo(ChronoUnit.MILLIS)
        .format(DateTimeFormatter.ISO_INSTANT);
  }
}
