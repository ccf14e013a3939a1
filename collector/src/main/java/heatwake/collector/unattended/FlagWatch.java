package heatwake.collector.unattended;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Runs the analysis on the run so far, again and again, and tells each flag once. A flag is the
 * same as one told before if it is of the same rule and their times touch.
 */
final class FlagWatch {
  /** Times this close touch: ends shift as more is known. */
  private static final long SAME_FLAG_MS = 10 * 60_000;

  private final Store store;
  private final FlagListener listener;
  private final Map<Long, List<Flag>> toldByRun = new HashMap<>();

  FlagWatch(Store store, FlagListener listener) {
    this.store = store;
    this.listener = listener;
  }

  /**
   * Looks at a run.
   *
   * @param site what to call its site
   */
  void look(String site, long run) {
    Recording recording = store.load(run);
    List<Flag> told = toldByRun.computeIfAbsent(run, first -> new ArrayList<>());
    for (Flag flag : Analysis.of(recording).flags()) {
      boolean isNew = told.stream().noneMatch(before -> isSame(before, flag));
      told.removeIf(before -> isSame(before, flag));
      told.add(flag);
      if (isNew) {
        listener.arose(site, run, flag);
      }
    }
  }

  /** The flags of a run as of the last look, and those seen before. */
  List<Flag> flags(long run) {
    return List.copyOf(toldByRun.getOrDefault(run, List.of()));
  }

  private static boolean isSame(Flag one, Flag other) {
    return one.rule().equals(other.rule())
        && one.startMs() <= other.endMs() + SAME_FLAG_MS
        && other.startMs() <= one.endMs() + SAME_FLAG_MS;
  }
}
