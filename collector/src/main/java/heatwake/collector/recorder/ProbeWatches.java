package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.RigFile;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hears the probes of a run as their readings are handed in, before these wait for the database: a
 * recorder that cannot write is no silence of a probe, and what it writes then is no flood.
 */
final class ProbeWatches {
  private static final Logger LOG = LoggerFactory.getLogger(ProbeWatches.class);

  /** The log gets a line of silent probes at most so often: a bad plug must not fill the disk. */
  private static final long QUIET_NS = Duration.ofMinutes(1).toNanos();

  private final String site;
  private final RecorderClock clock;
  private final Set<Channel> silent = EnumSet.noneOf(Channel.class);
  private final List<String> untold = new ArrayList<>();
  private Optional<Long> toldNs = Optional.empty();
  private final Map<Channel, ProbeWatch> watches = new EnumMap<>(Channel.class);

  ProbeWatches(RigFile rig, RecorderClock clock) {
    this.site = rig.siteInLog();
    this.clock = clock;
    long nowNs = clock.monotonicNs();
    for (ProbeSpec probe : rig.probes()) {
      watches.put(probe.channel(), new ProbeWatch(probe.intervalS(), nowNs));
    }
  }

  /** What a reading changed in what is known of its probe. */
  record Heard(Channel channel, ProbeWatch watch, ProbeWatch.Change change) {}

  /**
   * Readings were handed in, by the thread of their source.
   *
   * @return what that changed, nearly always nothing; {@link #tell(List, long, EventBook)} it. So a
   *     source need not wait for the writer, which holds the events while it looks at readings.
   */
  synchronized List<Heard> heard(List<Reading> readings) {
    long nowNs = clock.monotonicNs();
    List<Heard> changes = List.of();
    for (Reading reading : readings) {
      if (Double.isFinite(reading.value())) {
        ProbeWatch watch = watch(reading.channel(), nowNs);
        ProbeWatch.Change change = watch.heard(nowNs, reading);
        if (change != ProbeWatch.Change.NOTHING) {
          changes = changes.isEmpty() ? new ArrayList<>() : changes;
          changes.add(new Heard(reading.channel(), watch, change));
        }
      }
    }
    return changes;
  }

  private ProbeWatch watch(Channel channel, long nowNs) {
    ProbeWatch known = watches.get(channel);
    if (known == null) {
      known = new ProbeWatch(OptionalDouble.empty(), nowNs);
      watches.put(channel, known);
    }
    return known;
  }

  /** Tells what was heard. */
  synchronized void tell(List<Heard> changes, long nowMs, EventBook events) {
    changes.forEach(one -> tell(one.channel(), one.watch(), one.change(), nowMs, events));
  }

  /** Memory is full and a source was made to wait: what it cannot hand in is no silence. */
  synchronized void heldUp() {
    long nowNs = clock.monotonicNs();
    watches.values().forEach(watch -> watch.heldUp(nowNs));
  }

  /** Looks for probes that are silent or flood; to be called about once a second. */
  synchronized void look(long nowMs, EventBook events) {
    long nowNs = clock.monotonicNs();
    watches.forEach((channel, watch) -> tell(channel, watch, watch.look(nowNs), nowMs, events));
    boolean quiet = toldNs.isPresent() && nowNs - toldNs.get() < QUIET_NS;
    if (!untold.isEmpty() && !quiet) {
      toldNs = Optional.of(nowNs);
      LOG.warn(
          "{}: {}{}",
          site,
          untold.get(0),
          untold.size() == 1 ? "" : "; and " + (untold.size() - 1) + " more, see the status");
      untold.clear();
    }
  }

  /** The channels of which nothing has come for too long. */
  synchronized Set<Channel> silent() {
    return Set.copyOf(silent);
  }

  private void tell(
      Channel channel, ProbeWatch watch, ProbeWatch.Change change, long nowMs, EventBook events) {
    switch (change) {
      case NOTHING -> {}
      case SPOKE_AGAIN -> {
        silent.remove(channel);
        events.ended(EventKind.PROBE_SILENT, channel.id(), nowMs);
      }
      case FLOODS_NO_MORE -> events.ended(EventKind.FLOODING, channel.id(), nowMs);
      case FELL_SILENT -> {
        double silentS = watch.silenceS(clock.monotonicNs());
        String text =
            String.format(
                Locale.ROOT,
                "%s %s for %.0f s; %s; check the probe's power, wire and reach",
                channel,
                watch.everHeard() ? "has sent nothing" : "has never sent anything,",
                silentS,
                watch.expectation());
        silent.add(channel);
        untold.add(text);
        events.began(
            EventKind.PROBE_SILENT, channel.id(), nowMs - Math.round(silentS * 1000), text);
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
}
