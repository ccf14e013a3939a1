package heatwake.dashboard.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Marks of a time axis at round local times. */
public final class TimeTicks {
  private static final long SECOND = 1000;
  private static final long MINUTE = 60 * SECOND;
  private static final long HOUR = 60 * MINUTE;
  private static final long DAY = 24 * HOUR;

  /**
   * Steps of at most half a day divide the day, so that marks fall on the same clock times daily.
   */
  private static final long[] STEPS = {
    SECOND,
    2 * SECOND,
    5 * SECOND,
    10 * SECOND,
    15 * SECOND,
    30 * SECOND,
    MINUTE,
    2 * MINUTE,
    5 * MINUTE,
    10 * MINUTE,
    15 * MINUTE,
    30 * MINUTE,
    HOUR,
    2 * HOUR,
    3 * HOUR,
    6 * HOUR,
    12 * HOUR,
    DAY,
    2 * DAY,
    7 * DAY,
    14 * DAY,
    28 * DAY
  };

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter CLOCK_S =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final DateTimeFormatter DAY_NAME =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private TimeTicks() {}

  /**
   * Marks at round times within a range, no more than fit side by side.
   *
   * @param most greatest number of marks wanted, at least 2
   * @param zone whose clock times are round
   */
  public static List<TimeTick> round(TimeRange range, int most, ZoneId zone) {
    long step = stepFor(range.lengthMs(), most);
    return step < DAY ? withinDays(range, step, zone) : wholeDays(range, step, zone);
  }

  /** The shortest round step of which a length holds no more than {@code most}. */
  static long stepFor(long lengthMs, int most) {
    for (long step : STEPS) {
      if (lengthMs / step < most) {
        return step;
      }
    }
    return (lengthMs / most / (28 * DAY) + 1) * 28 * DAY;
  }

  private static List<TimeTick> withinDays(TimeRange range, long step, ZoneId zone) {
    DateTimeFormatter clock = step < MINUTE ? CLOCK_S : CLOCK;
    List<TimeTick> ticks = new ArrayList<>();
    LocalDate day = Instant.ofEpochMilli(range.fromMs()).atZone(zone).toLocalDate();
    long next = range.fromMs();
    while (next <= range.toMs()) {
      ZonedDateTime midnight = day.atStartOfDay(zone);
      long tomorrow = day.plusDays(1).atStartOfDay(zone).toInstant().toEpochMilli();
      // By the wall clock of the day, so that marks stay round on the days the clocks change.
      for (long sinceMidnight = 0; sinceMidnight < DAY; sinceMidnight += step) {
        ZonedDateTime at =
            midnight.toLocalDateTime().plus(Duration.ofMillis(sinceMidnight)).atZone(zone);
        long ms = at.toInstant().toEpochMilli();
        boolean repeated = !ticks.isEmpty() && ms <= ticks.get(ticks.size() - 1).ms();
        if (range.contains(ms) && ms < tomorrow && !repeated) {
          boolean newDay = sinceMidnight == 0;
          ticks.add(new TimeTick(ms, (newDay ? DAY_NAME : clock).format(at), newDay));
        }
      }
      next = tomorrow;
      day = day.plusDays(1);
    }
    return ticks;
  }

  private static List<TimeTick> wholeDays(TimeRange range, long step, ZoneId zone) {
    int days = (int) (step / DAY);
    List<TimeTick> ticks = new ArrayList<>();
    LocalDate day = Instant.ofEpochMilli(range.fromMs()).atZone(zone).toLocalDate();
    day = LocalDate.ofEpochDay(Math.floorDiv(day.toEpochDay(), days) * (long) days);
    while (day.atStartOfDay(zone).toInstant().toEpochMilli() <= range.toMs()) {
      ZonedDateTime at = day.atStartOfDay(zone);
      long ms = at.toInstant().toEpochMilli();
      if (range.contains(ms)) {
        ticks.add(new TimeTick(ms, DAY_NAME.format(at), true));
      }
      day = day.plusDays(days);
    }
    return ticks;
  }
}
