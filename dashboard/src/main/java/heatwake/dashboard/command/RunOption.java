package heatwake.dashboard.command;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.util.List;
import picocli.CommandLine.Option;

/** The option that names a run; the newest one where it is left out. */
final class RunOption {
  @Option(
      names = "--run",
      paramLabel = "ID",
      converter = RunNumber.class,
      description = "Number of the run; default the newest.")
  private Long id;

  /**
   * The run to work on.
   *
   * @throws MistakeException if the store holds no run at all
   */
  long in(Store store) {
    if (id != null) {
      return id;
    }
    List<RunSummary> runs = store.runs();
    if (runs.isEmpty()) {
      throw new MistakeException(
          "the database holds no run yet; record one with heatwake record or import one with heatwake import");
    }
    return runs.get(runs.size() - 1).id();
  }
}
