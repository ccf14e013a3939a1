package heatwake.collector.recorder;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Which sources of a run can be reached now. Losses and returns go to the log, for each source at
 * most one loss a minute, so that a plug that wobbles all night does not fill the disk.
 */
final class SourceStates {
  private static final Logger LOG = LoggerFactory.getLogger(SourceStates.class);
  private static final long QUIET_NS = Duration.ofMinutes(1).toNanos();

  private final String site;
  private final Map<String, Entry> byName = new LinkedHashMap<>();

  /** One source, or one unit on its bus. */
  private static final class Entry {
    private long sinceMs;
    private Optional<String> lostBecause = Optional.empty();
    private Optional<Long> lossToldNs = Optional.empty();
    private boolean thisLossTold;

    private Entry(long sinceMs) {
      this.sinceMs = sinceMs;
    }
  }

  /** The sources of a rig, all of them taken as reached until one says that it is not. */
  SourceStates(RigFile rig, long nowMs) {
    this.site = rig.siteInLog();
    for (SourceSpec source : rig.sources()) {
      byName.put(source.name(), new Entry(nowMs));
    }
  }

  /** A source cannot be reached; told again at every vain attempt. */
  synchronized void lost(String name, String why, long nowMs, long nowNs) {
    Entry entry = byName.computeIfAbsent(name, one -> new Entry(nowMs));
    if (entry.lostBecause.isEmpty()) {
      entry.sinceMs = nowMs;
      entry.thisLossTold = false;
    }
    entry.lostBecause = Optional.of(why);
    boolean quiet = entry.lossToldNs.isPresent() && nowNs - entry.lossToldNs.get() < QUIET_NS;
    if (!entry.thisLossTold && !quiet) {
      entry.thisLossTold = true;
      entry.lossToldNs = Optional.of(nowNs);
      LOG.warn("{}: source {} lost: {}; it is tried again for ever", site, name, why);
    }
  }

  /** A source works; nothing if it was not lost. */
  synchronized void back(String name, long nowMs) {
    Entry entry = byName.get(name);
    if (entry == null || entry.lostBecause.isEmpty()) {
      return;
    }
    if (entry.thisLossTold) {
      LOG.info(
          "{}: source {} is back after {} s",
          site,
          name,
          Math.max(0, nowMs - entry.sinceMs) / 1000);
    }
    entry.lostBecause = Optional.empty();
    entry.sinceMs = nowMs;
  }

  synchronized List<SourceState> all() {
    List<SourceState> all = new ArrayList<>();
    byName.forEach((name, one) -> all.add(new SourceState(name, one.sinceMs, one.lostBecause)));
    return all;
  }
}
