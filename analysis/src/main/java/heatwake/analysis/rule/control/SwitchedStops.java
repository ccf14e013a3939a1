package heatwake.analysis.rule.control;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * The stops of some cycles at which the flow switch opened.
 *
 * @param opened their number
 * @param cycles number of the cycles
 */
record SwitchedStops(long opened, int cycles) {
  /** A heater stops within this time of its flow switch opening; common practice, s. */
  private static final double AROUND_S = 15;

  static SwitchedStops of(List<Cycle> bout, Timeline timeline) {
    return new SwitchedStops(
        bout.stream()
            .filter(cycle -> cycle.stopMs().isPresent())
            .filter(cycle -> switchOpens(timeline, cycle.stopMs().getAsLong()))
            .count(),
        bout.size());
  }

  /** Whether most of the cycles ended so. */
  boolean areMost() {
    return 2 * opened > cycles;
  }

  private static boolean switchOpens(Timeline timeline, long stopMs) {
    if (!timeline.has(Channel.FLOW_SWITCH)) {
      return false;
    }
    double[] closed = timeline.of(Channel.FLOW_SWITCH);
    // A switch that is read seldom is caught open a reading before the stop or after it.
    int around =
        Math.max(timeline.instants(AROUND_S), timeline.intervalInstants(Channel.FLOW_SWITCH) + 1);
    int at = timeline.indexAt(stopMs);
    for (int i = Math.max(0, at - around); i < Math.min(closed.length, at + around); i++) {
      if (closed[i] < 0.5) {
        return true;
      }
    }
    return false;
  }
}
