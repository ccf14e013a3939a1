package heatwake.dashboard.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.Store;
import heatwake.dashboard.json.FindingsJson;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.text.FindingsText;
import java.io.PrintWriter;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says what was found in a run. */
@Command(name = "analyse", description = "Says what was found in a run.")
final class AnalyseCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private StoreOption store;

  @Mixin private RunOption run;

  @Mixin private UnitOption units;

  @Option(names = "--json", description = "Print JSON for scripts.")
  private boolean json;

  @Override
  public Integer call() throws JsonProcessingException {
    Recording recording;
    try (Store open = Store.openExisting(store.file())) {
      recording = open.load(run.in(open));
    }
    Findings findings = Analysis.of(recording);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(
          new ObjectMapper()
              .enable(SerializationFeature.INDENT_OUTPUT)
              .writeValueAsString(FindingsJson.of(findings)));
    } else {
      new FindingsText(recording, findings, units.choice(), new Moment(ZoneId.systemDefault()))
          .writeTo(out);
    }
    return Main.DONE;
  }
}
