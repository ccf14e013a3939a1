package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.FedAlike;
import heatwake.collector.store.Store;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs that a killed recorder left without an end. */
final class CrashedRuns {
  private static final Logger LOG = LoggerFactory.getLogger(CrashedRuns.class);

  private final Set<Long> runs = new TreeSet<>();

  /** Ends them at their last reading; those of living recorders are left alone. */
  void end(Store store, RunLocks locks) {
    for (long run : store.runsWithoutEnd()) {
      if (locks.take(run)) {
        store.inOneCommit(() -> end(store, run));
        locks.free(run);
        runs.add(run);
        LOG.info("run {} was left without an end; ended it at its last reading", run);
      }
    }
  }

  /**
   * The run that a new one of a rig goes on from: of those of its rig the one whose rig file was
   * named by the same path, else the latest, for a path is another one by hand and as a service.
   */
  OptionalLong of(Store store, RigFile rig) {
    List<Long> ofRig =
        store.earlierOfRig(rig, Long.MAX_VALUE).stream()
            .map(FedAlike::run)
            .filter(runs::contains)
            .toList();
    return ofRig.stream()
        .filter(run -> store.rigName(run).equals(rig.nameWithFolder()))
        .findFirst()
        .or(() -> ofRig.stream().findFirst())
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  /** Another run goes on from one of them. */
  void wentOn(long run) {
    runs.remove(run);
  }

  private static void end(Store store, long run) {
    long endMs = store.lastMomentMs(run);
    store.endEvents(run, endMs);
    store.addEvent(
        run,
        EventKind.RECORDER_STOPPED,
        "recorder",
        endMs,
        OptionalLong.of(endMs),
        1,
        "the recorder was killed or lost power after the last reading");
    store.endRun(run, endMs);
  }
}
