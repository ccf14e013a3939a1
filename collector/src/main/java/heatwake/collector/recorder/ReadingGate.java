package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.RigFile;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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

  private final RecorderClock clock;
  private final RunTime time;
  private final Map<Channel, ProbeWatch> watches = new EnumMap<>(Channel.class);
  private final Map<Channel, Long> lastArrivalMs = new EnumMap<>(Channel.class);
  private final Map<Channel, Reading> latest = new EnumMap<>(Channel.class);

  ReadingGate(RigFile rig, RecorderClock clock, RunTime time) {
    this.clock = clock;
    this.time = time;
    long nowNs = clock.monotonicNs();
    for (ProbeSpec probe : rig.probes()) {
      watches.put(probe.channel(), new ProbeWatch(probe.intervalS(), nowNs));
    }
  }

  /** Of readings that came together, those that are to be stored, as they are to be. */
  List<Reading> pass(List<Reading> readings, EventBook events) {
    long nowMs = time.nowMs();
    long nowNs = clock.monotonicNs();
    List<Reading> passed = new ArrayList<>(readings.size());
    for (Reading reading : readings) {
      pass(reading, nowMs, nowNs, events).ifPresent(passed::add);
    }
    return passed;
  }

  private Optional<Reading> pass(Reading reading, long nowMs, long nowNs, EventBook events) {
    Channel channel = reading.channel();
    if (!Double.isFinite(reading.value())) {
      events.happened(
          EventKind.UNREADABLE, channel.id(), nowMs, channel + " sent a value that is none");
      return Optional.empty();
    }
    Optional<Reading> timed = withSoundTime(reading, nowMs, events);
    if (timed.isEmpty()) {
      return timed;
    }
    Reading sound = timed.get();
    if (!channel.isPossible(sound.value())) {
      events.happened(
          EventKind.OUT_OF_RANGE,
          channel.id(),
          sound.timeMs(),
          String.format(
              Locale.ROOT,
              "%s of %s %s cannot be; possible is %s",
              channel,
              sound.value(),
              channel.storedUnit().code(),
              channel.possibleRange()));
    }
    hear(channel, nowMs, nowNs, events);
    latest.put(channel, sound);
    return timed;
  }

  private Optional<Reading> withSoundTime(Reading reading, long nowMs, EventBook events) {
    Channel channel = reading.channel();
    if (!reading.stampedByProbe()) {
      return arrived(channel, Math.min(reading.timeMs(), nowMs), reading.value(), nowMs, events);
    }
    if (reading.timeMs() < EARLIEST_MS || reading.timeMs() >= LATEST_MS) {
      events.happened(
          EventKind.TIME_REFUSED,
          channel.id(),
          nowMs,
          channel
              + " gave the time "
              + instant(reading.timeMs())
              + "; the moment of arrival was taken instead; set the probe's clock");
      return arrived(channel, nowMs, reading.value(), nowMs, events);
    }
    if (Math.abs(reading.timeMs() - nowMs) > CLOCK_OFF_MS) {
      events.happened(
          EventKind.PROBE_CLOCK,
          channel.id(),
          nowMs,
          channel
              + " gave the time "
              + instant(reading.timeMs())
              + ", more than a day off the logger's; kept as given; set the probe's clock");
    }
    return Optional.of(reading);
  }

  /** No two readings of a channel that are stamped by arrival have one time. */
  private Optional<Reading> arrived(
      Channel channel, long atMs, double value, long nowMs, EventBook events) {
    Long last = lastArrivalMs.get(channel);
    long stampMs = last == null ? atMs : Math.max(atMs, last + 1);
    if (stampMs > nowMs + LONGEST_AHEAD_MS) {
      events.happened(
          EventKind.FLOODING,
          channel.id() + " dropped",
          nowMs,
          channel + " sends far more than one reading a millisecond; what is beyond is dropped");
      return Optional.empty();
    }
    lastArrivalMs.put(channel, stampMs);
    return Optional.of(new Reading(channel, stampMs, value, false));
  }

  private void hear(Channel channel, long nowMs, long nowNs, EventBook events) {
    ProbeWatch watch =
        watches.computeIfAbsent(channel, absent -> new ProbeWatch(OptionalDouble.empty(), nowNs));
    tell(channel, watch, watch.heard(nowNs), nowMs, events);
  }

  /** Looks for probes that are silent or flood; to be called about once a second. */
  void look(EventBook events) {
    long nowMs = time.nowMs();
    long nowNs = clock.monotonicNs();
    watches.forEach((channel, watch) -> tell(channel, watch, watch.look(nowNs), nowMs, events));
  }

  private void tell(
      Channel channel, ProbeWatch watch, ProbeWatch.Change change, long nowMs, EventBook events) {
    switch (change) {
      case NOTHING -> {}
      case SPOKE_AGAIN -> events.ended(EventKind.PROBE_SILENT, channel.id(), nowMs);
      case FLOODS_NO_MORE -> events.ended(EventKind.FLOODING, channel.id(), nowMs);
      case FELL_SILENT -> {
        double silentS = watch.silenceS(clock.monotonicNs());
        events.began(
            EventKind.PROBE_SILENT,
            channel.id(),
            nowMs - Math.round(silentS * 1000),
            String.format(
                Locale.ROOT,
                "%s %s for %.0f s; %s; check the probe's power, wire and reach",
                channel,
                watch.everHeard() ? "has sent nothing" : "has never sent anything,",
                silentS,
                watch.expectation()));
      }
      case FLOODS ->
          events.began(
              EventKind.FLOODING,
              channel.id(),
              nowMs,
              String.format(
                  Locale.ROOT,
                  "%s sends %.0f readings a second; %s; all are kept",
                  channel,
                  watch.ratePerS(),
                  watch.expectation()));
    }
  }

  /** The latest reading of each channel. */
  Map<Channel, Reading> latest() {
    return new EnumMap<>(latest);
  }

  private static String instant(long timeMs) {
    return Instant.ofEpochMilli(timeMs).truncatedTo(ChronoUnit.SECONDS).toString();
  }
}
