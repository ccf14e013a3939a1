package heatwake.analysis.heat;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * The times that delivered heat is counted over: from each compressor start until three minutes
 * after it stops, so that run-on heat counts; never past the next start or the end of the run.
 */
public final class Windows {
  /** Run-on after a stop, as the figure is defined. */
  public static final long RUN_ON_MS = 180_000;

  /** One window, from index {@code from} up to but not including {@code to}. */
  public record Window(int from, int to) {}

  private Windows() {}

  /** Windows of a run in order of time; none overlap. */
  public static List<Window> of(Timeline timeline, List<Cycle> cycles) {
    List<Window> windows = new ArrayList<>();
    for (int k = 0; k < cycles.size(); k++) {
      windows.add(
          k + 1 < cycles.size() && isSilence(cycles.get(k), cycles.get(k + 1))
              ? new Window(start(timeline, cycles.get(k)), start(timeline, cycles.get(k + 1)))
              : of(timeline, cycles.get(k)));
    }
    return windows;
  }

  /** Window of one cycle. */
  public static Window of(Timeline timeline, Cycle cycle) {
    long end = timeline.timeMs(timeline.size());
    if (cycle.stopMs().isPresent()) {
      end = Math.min(end, cycle.stopMs().getAsLong() + RUN_ON_MS);
    }
    if (cycle.nextStartMs().isPresent()) {
      end = Math.min(end, cycle.nextStartMs().getAsLong());
    }
    return new Window(start(timeline, cycle), timeline.firstAtOrAfter(end));
  }

  /** Whether what parts two cycles is only a silence short enough to be bridged. */
  private static boolean isSilence(Cycle cycle, Cycle next) {
    return !next.startSeen()
        && cycle.stopMs().isPresent()
        && next.startMs() - cycle.stopMs().getAsLong() <= Bridging.LONGEST_MS;
  }

  private static int start(Timeline timeline, Cycle cycle) {
    return timeline.firstAtOrAfter(cycle.startMs());
  }
}
