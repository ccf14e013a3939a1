package heatwake.dashboard.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import heatwake.analysis.Analysis;
import heatwake.analysis.compare.Comparison;
import heatwake.analysis.series.Recording;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.Store;
import heatwake.dashboard.json.ComparisonJson;
import heatwake.dashboard.text.ComparisonText;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Compares two runs of one heater on equal conditions. */
@Command(name = "compare", description = "Compares two runs of one heater on equal conditions.")
final class CompareCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private StoreOption store;

  @Mixin private UnitOption units;

  @Option(
      names = "--run",
      required = true,
      paramLabel = "ID",
      converter = RunNumber.class,
      description = "Given twice: the earlier run, then the later one.")
  private List<Long> runs;

  @Option(names = "--json", description = "Print JSON for scripts.")
  private boolean json;

  @Override
  public Integer call() throws JsonProcessingException {
    if (runs.size() != 2) {
      throw new MistakeException(
          "compare takes two runs, not " + runs.size() + "; write --run A --run B");
    }
    if (runs.get(0).equals(runs.get(1))) {
      throw new MistakeException("run " + runs.get(0) + " is named twice; name two runs");
    }
    Recording earlier;
    Recording later;
    try (Store open = Store.openExisting(store.file())) {
      earlier = open.load(runs.get(0));
      later = open.load(runs.get(1));
    }
    Comparison comparison =
        Comparison.of(earlier.rig(), Analysis.of(earlier), later.rig(), Analysis.of(later));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(
          new ObjectMapper()
              .enable(SerializationFeature.INDENT_OUTPUT)
              .writeValueAsString(ComparisonJson.of(comparison)));
    } else {
      new ComparisonText(comparison, units.choice()).writeTo(out);
    }
    return Main.DONE;
  }
}
