package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Reading;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * What every reading of a run passes on its way to the store: its time stamp and value are looked
 * at, and what is odd becomes an event. A good value is never turned away for an odd time. Used by
 * the writer thread alone.
 */
final class ReadingGate {
  /** Stamps before and after these are no probe's clock but a fault. */
  private static final long EARLIEST_MS = Instant.parse("2000-01-01T00:00:00Z").toEpochMilli();

  private static final long LATEST_MS = Instant.parse("2100-01-01T00:00:00Z").toEpochMilli();

  /** A probe's clock further off than this is told of; its stamps are kept. */
  private static final long CLOCK_OFF_MS = TimeUnit.DAYS.toMillis(1);

  /** Readings stamped by arrival that come faster than one a millisecond run ahead at most this. */
  private static final long LONGEST_AHEAD_MS = 60_000;

  private static final long NEVER = Long.MIN_VALUE;

  /** In place of a time: the reading is not to be kept. */
  private static final long DROPPED = Long.MIN_VALUE;

  private final Map<Channel, Seen> channels = new EnumMap<>(Channel.class);

  /** What was seen of one channel. */
  private static final class Seen {
    private long lastArrivalMs = NEVER;
    private Reading latest;
  }

  /**
   * Looks at readings that came together and adds those that are to be stored, as they are to be.
   * Runs once for every reading there is, so it makes nothing that it does not keep.
   *
   * @param arrivedMs when they were handed in, UTC milliseconds; they may have waited since
   */
  void pass(List<Reading> readings, long arrivedMs, EventBook events, List<Reading> passed) {
    for (Reading reading : readings) {
      Channel channel = reading.channel();
      if (!Double.isFinite(reading.value())) {
        events.happened(
            EventKind.UNREADABLE,
            channel.id(),
            arrivedMs,
            () -> channel + " sent a value that is none");
        continue;
      }
      Seen seen = channels.computeIfAbsent(channel, first -> new Seen());
      boolean byProbe = reading.stampedByProbe() && isSoundTime(reading, arrivedMs, events);
      long timeMs = byProbe ? reading.timeMs() : arrivalMs(reading, seen, arrivedMs, events);
      if (timeMs == DROPPED) {
        continue;
      }
      boolean asGiven = timeMs == reading.timeMs() && byProbe == reading.stampedByProbe();
      Reading sound = asGiven ? reading : new Reading(channel, timeMs, reading.value(), byProbe);
      if (!channel.isPossible(sound.value())) {
        tellImpossible(sound, arrivedMs, events);
      }
      seen.latest = sound;
      passed.add(sound);
    }
  }

  private static void tellImpossible(Reading reading, long arrivedMs, EventBook events) {
    Channel channel = reading.channel();
    events.happened(
        EventKind.OUT_OF_RANGE,
        channel.id(),
        arrivedMs,
        () ->
            String.format(
                Locale.ROOT,
                "%s of %s %s cannot be; possible is %s",
                channel,
                reading.value(),
                channel.storedUnit().code(),
                channel.possibleRange()));
  }

  /** Whether the time that a probe gave can be kept, however wrong the probe's clock is. */
  private static boolean isSoundTime(Reading reading, long arrivedMs, EventBook events) {
    Channel channel = reading.channel();
    if (reading.timeMs() < EARLIEST_MS || reading.timeMs() >= LATEST_MS) {
      events.happened(
          EventKind.TIME_REFUSED,
          channel.id(),
          arrivedMs,
          () ->
              channel
                  + " gave the time "
                  + instant(reading.timeMs())
                  + "; the moment of arrival was taken instead; set the probe's clock");
      return false;
    }
    if (Math.abs(reading.timeMs() - arrivedMs) > CLOCK_OFF_MS) {
      events.happened(
          EventKind.PROBE_CLOCK,
          channel.id(),
          arrivedMs,
          () ->
              channel
                  + " gave the time "
                  + instant(reading.timeMs())
                  + ", more than a day off the logger's; kept as given; set the probe's clock");
    }
    return true;
  }

  /**
   * The time of a reading that is stamped by its arrival; no two of a channel have the same.
   *
   * @return {@link #DROPPED} if there are far too many of them
   */
  private static long arrivalMs(Reading reading, Seen seen, long arrivedMs, EventBook events) {
    Channel channel = reading.channel();
    long atMs = reading.stampedByProbe() ? arrivedMs : Math.min(reading.timeMs(), arrivedMs);
    long stampMs = seen.lastArrivalMs == NEVER ? atMs : Math.max(atMs, seen.lastArrivalMs + 1);
    if (stampMs > arrivedMs + LONGEST_AHEAD_MS) {
      events.happened(
          EventKind.FLOODING,
          channel.id() + " dropped",
          arrivedMs,
          () ->
              channel
                  + " sends far more than one reading a millisecond; what is beyond is dropped");
      return DROPPED;
    }
    seen.lastArrivalMs = stampMs;
    return stampMs;
  }

  /** The latest reading of each channel. */
  Map<Channel, Reading> latest() {
    Map<Channel, Reading> known = new EnumMap<>(Channel.class);
    channels.forEach(
        (channel, seen) -> {
          if (seen.latest != null) {
            known.put(channel, seen.latest);
          }
        });
    return known;
  }

  private static String instant(long timeMs) {
    return Instant.ofEpochMilli(timeMs).truncatedTo(ChronoUnit.SECONDS).toString();
  }
}
