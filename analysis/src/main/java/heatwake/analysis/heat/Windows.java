package heatwake.analysis.heat;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.timeline.Timeline;
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
    return cycles.stream().map(cycle -> of(timeline, cycle)).toList();
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
    return new Window(timeline.firstAtOrAfter(cycle.startMs()), timeline.firstAtOrAfter(end));
  }
}
