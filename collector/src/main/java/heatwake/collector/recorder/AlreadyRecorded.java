package heatwake.collector.recorder;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.rig.RigFile;
import heatwake.collector.store.FedAlike;
import heatwake.collector.store.Store;
import java.util.List;

/**
 * Keeps a rig from being recorded twice at once. The second recorder would find the serial ports
 * busy, and at a broker, where both have one session, each would throw the other out once a second.
 */
final class AlreadyRecorded {
  private AlreadyRecorded() {}

  /**
   * @throws MistakeException if a living recorder has a run of this rig
   */
  static void refuse(Store store, RunLocks locks, RigFile rig) {
    List<Long> withoutEnd = store.runsWithoutEnd();
    for (FedAlike earlier : store.earlierOfRig(rig, Long.MAX_VALUE)) {
      long run = earlier.run();
      if (withoutEnd.contains(run) && !isFree(locks, run)) {
        throw new MistakeException(
            store.file()
                + ": "
                + rig.nameWithFolder()
                + " is being recorded into it already, as run "
                + run
                + "; stop that recorder first");
      }
    }
  }

  private static boolean isFree(RunLocks locks, long run) {
    boolean free = locks.take(run);
    if (free) {
      locks.free(run);
    }
    return free;
  }
}
