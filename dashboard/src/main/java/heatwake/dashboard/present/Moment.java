package heatwake.dashboard.present;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.function.LongFunction;

/** Writes times and durations as people read them, in one time zone that is said. */
public final class Moment {
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH);

  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter ZONE = DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH);

  private final ZoneId zone;

  /** Writes times in a zone. */
  public Moment(ZoneId zone) {
    this.zone = zone;
  }

  /** The zone's name, to be said once on a page or screen. */
  public String zoneName() {
    return zone.getId();
  }

  public ZoneId zone() {
    return zone;
  }

  /** The zone with its distance from UTC at a moment, {@code CEST, UTC+02:00}. */
  public String zoneAt(long ms) {
    String offset = Instant.ofEpochMilli(ms).atZone(zone).getOffset().getId();
    if (offset.equals("Z")) {
      return "UTC";
    }
    String name = ZONE.format(Instant.ofEpochMilli(ms).atZone(zone));
    boolean isOnlyAnOffset = name.startsWith("GMT") || name.equals(offset);
    return (isOnlyAnOffset ? "" : name + ", ") + "UTC" + offset;
  }

  /** {@code 4 May 2031}. */
  public String date(long ms) {
    return DATE.format(Instant.ofEpochMilli(ms).atZone(zone));
  }

  /** {@code 18:00}. */
  public String clock(long ms) {
    return CLOCK.format(Instant.ofEpochMilli(ms).atZone(zone));
  }

  /** {@code 4 May 2031 18:00}. */
  public String dayAndTime(long ms) {
    return DAY_AND_TIME.format(Instant.ofEpochMilli(ms).atZone(zone));
  }

  /** {@code 18:00:07}. */
  public String time(long ms) {
    return TIME.format(Instant.ofEpochMilli(ms).atZone(zone));
  }

  /** {@code 4 May 18:00}. */
  public String shortDayAndTime(long ms) {
    return SHORT.format(Instant.ofEpochMilli(ms).atZone(zone));
  }

  /**
   * {@code 4 May 18:00 to 18:40} on one day, otherwise with both days; within one minute with the
   * seconds.
   */
  public String span(long startMs, long endMs) {
    return span(startMs, endMs, this::shortDayAndTime);
  }

  /** {@code 4 May 2031 18:00 to 18:40}: as {@link #span}, with the year. */
  public String spanWithYear(long startMs, long endMs) {
    return span(startMs, endMs, this::dayAndTime);
  }

  private String span(long startMs, long endMs, LongFunction<String> written) {
    String start = written.apply(startMs);
    String end = written.apply(endMs);
    if (start.equals(end)) {
      String day = start.substring(0, start.lastIndexOf(' ') + 1);
      return day + time(startMs) + " to " + time(endMs);
    }
    boolean sameDay = date(startMs).equals(date(endMs));
    return start + " to " + (sameDay ? clock(endMs) : end);
  }

  /** {@code 13 h 58 min}, {@code 4 min 10 s}, {@code 12 s}. */
  public static String duration(long ms) {
    long seconds = Math.round(ms / 1e3);
    if (seconds < 60) {
      return seconds + " s";
    }
    if (seconds < 3600) {
      return seconds / 60 + " min" + (seconds % 60 == 0 ? "" : " " + seconds % 60 + " s");
    }
    long minutes = Math.round(seconds / 60.0);
    return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
  }
}
