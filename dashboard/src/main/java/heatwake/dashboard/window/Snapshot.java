package heatwake.dashboard.window;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.RunHeading;
import heatwake.dashboard.chart.RunCharts;
import java.util.List;
import java.util.Optional;

/**
 * What the watcher last saw of the store.
 *
 * @param runs the runs there are, the oldest first
 * @param shown the run that is shown; empty while the store holds none
 */
record Snapshot(List<RunHeading> runs, Optional<Shown> shown) {
  Snapshot {
    runs = List.copyOf(runs);
  }

  /**
   * The run that is shown.
   *
   * @param heading its line in the list of runs
   * @param recording its readings
   * @param findings what was found in it
   * @param charts its charts
   * @param liveness whether it grows
   */
  record Shown(
      RunHeading heading,
      Recording recording,
      Findings findings,
      RunCharts charts,
      Liveness liveness) {}
}
