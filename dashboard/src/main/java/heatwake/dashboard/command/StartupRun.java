package heatwake.dashboard.command;

import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Heater;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.util.Comparator;
import java.util.Optional;

/**
 * The run that a later one is held against: the site's first, with the same heater. Heaters without
 * a label are told apart by the name of their rig file, for a site may have two.
 */
final class StartupRun {
  private static final Comparator<RunSummary> FIRST =
      Comparator.comparingLong(RunSummary::startMs).thenComparingLong(RunSummary::id);

  private StartupRun() {}

  /** The first run of the same site and heater, if it is not the run itself. */
  static Optional<Recording> before(Recording run, Store store) {
    boolean labelled = !run.rig().heater().label().equals(Heater.UNKNOWN.label());
    String rigFile = store.rigFileName(run.run());
    return store.runs().stream()
        .filter(one -> one.site().equals(run.rig().site().name()) && isBefore(one, run))
        .filter(one -> labelled || store.rigFileName(one.id()).equals(rigFile))
        .min(FIRST)
        .map(first -> store.load(first.id()))
        .filter(first -> first.rig().heater().label().equals(run.rig().heater().label()));
  }

  private static boolean isBefore(RunSummary one, Recording run) {
    return one.startMs() < run.startMs()
        || (one.startMs() == run.startMs() && one.id() < run.run());
  }
}
