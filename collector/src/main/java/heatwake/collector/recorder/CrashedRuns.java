package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.store.RigMark;
import heatwake.collector.store.Store;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs that a killed recorder left without an end. */
final class CrashedRuns {
  private static final Logger LOG = LoggerFactory.getLogger(CrashedRuns.class);

  private CrashedRuns() {}

  /**
   * Ends them at their last reading; those of living recorders are left alone.
   *
   * @return the latest such run of each rig
   */
  static Map<RigMark, Long> end(Store store, RunLocks locks) {
    Map<RigMark, Long> latest = new HashMap<>();
    for (long run : store.runsWithoutEnd()) {
      if (locks.take(run)) {
        store.inOneCommit(() -> end(store, run));
        locks.free(run);
        latest.put(store.rigMark(run), run);
        LOG.info("run {} was left without an end; ended it at its last reading", run);
      }
    }
    return latest;
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
