package heatwake.collector.store;

import heatwake.analysis.series.EventKind;
import heatwake.collector.clock.ClockStep;
import java.sql.SQLException;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.TimeUnit;

/**
 * Decides which readings of a run bear a stamp that can be right. The others stay in the store and
 * in exports, but a probe whose clock is years off must not stretch the run over those years.
 *
 * <p>A run that was recorded has times of arrival to go by: a reading cannot be stamped long after
 * the last one came in, nor long before the first, unless its stamp is wrong. The limits are ours:
 * a day after, because clocks are set wrong by hours and time zones, and a week before, because
 * that long a broker may have kept a message. All is taken where the logger's own clock is no
 * measure: it was set in the run by more than an hour, had never been set, or half of the readings
 * disagree with it. Steps of an hour or less in all, such as a clock corrected or summer time, can
 * make no stamp a day wrong, and switch nothing off.
 *
 * <p>A run that was imported has stamps only; see {@link StampBulk}. Where the import met rows that
 * stray, which it told by an event, nothing outside the span of the other rows is taken either,
 * which is what the run's row says: begin and end.
 */
final class StampJudge {
  private static final long AFTER_MS = TimeUnit.DAYS.toMillis(1);
  private static final long BEFORE_MS = TimeUnit.DAYS.toMillis(7);

  /** Steps of the logger's clock up to this, all together, cannot make a stamp a day wrong. */
  private static final long STEPPED_MS = TimeUnit.HOURS.toMillis(1);

  /** A clock before the year 2000 has not been set. */
  private static final long SET_MS = 946_684_800_000L;

  private final ReadingTable readings;
  private final RunLog log;

  StampJudge(ReadingTable readings, RunLog log) {
    this.readings = readings;
    this.log = log;
  }

  /**
   * The stretch of time whose readings make up a run.
   *
   * @param run number of the run
   * @param beganMs when its recorder began it
   * @param endedMs when its recorder ended it; empty while it lasts
   * @param nowMs the present moment, UTC milliseconds; nothing can have arrived after it
   */
  StampWindow window(long run, long beganMs, OptionalLong endedMs, long nowMs) throws SQLException {
    Set<EventKind> kinds = log.kinds(run);
    if (kinds.contains(EventKind.CLOCK_STEP) && isClockLost(run)) {
      return StampWindow.ALL;
    }
    if (kinds.contains(EventKind.RECORDER_STARTED)) {
      return recorded(run, beganMs, endedMs, nowMs);
    }
    StampWindow bulk = new StampBulk(readings, run).window();
    return kinds.contains(EventKind.TIME_REFUSED) && endedMs.isPresent()
        ? new StampWindow(
            Math.max(bulk.fromMs(), beganMs), Math.min(bulk.untilMs(), endedMs.getAsLong() + 1))
        : bulk;
  }

  /** Whether the logger's clock was set by so much that stamps cannot be held against it. */
  private boolean isClockLost(long run) throws SQLException {
    long steppedMs = 0;
    for (String text : log.texts(run, EventKind.CLOCK_STEP)) {
      OptionalLong sizeMs = ClockStep.sizeMs(text);
      if (sizeMs.isEmpty()) {
        return true;
      }
      steppedMs += sizeMs.getAsLong();
    }
    return steppedMs > STEPPED_MS;
  }

  private StampWindow recorded(long run, long beganMs, OptionalLong endedMs, long nowMs)
      throws SQLException {
    boolean clockWasAhead = beganMs > nowMs;
    if (beganMs < SET_MS || (clockWasAhead && endedMs.isEmpty())) {
      return StampWindow.ALL;
    }
    long stoppedMs = endedMs.orElse(nowMs);
    long lastArrivalMs = clockWasAhead ? stoppedMs : Math.min(stoppedMs, nowMs);
    StampWindow window = new StampWindow(beganMs - BEFORE_MS, lastArrivalMs + AFTER_MS + 1);
    long outside =
        readings.countBetween(run, Long.MIN_VALUE, window.fromMs())
            + readings.countBetween(run, window.untilMs(), Long.MAX_VALUE);
    return outside > 0 && outside >= readings.countBetween(run, window.fromMs(), window.untilMs())
        ? StampWindow.ALL
        : window;
  }
}
