package heatwake.dashboard.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.Analysis;
import heatwake.analysis.compare.Comparison;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.Store;
import heatwake.dashboard.json.ComparisonJson;
import heatwake.dashboard.json.FindingsJson;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.text.ComparisonText;
import heatwake.dashboard.text.FindingsText;
import java.io.PrintWriter;
import java.time.ZoneId;
import java.util.Optional;
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
    Optional<Recording> startup;
    try (Store open = Store.openExisting(store.file())) {
      recording = open.load(run.in(open));
      startup = StartupRun.before(recording, open);
    }
    Findings findings = Analysis.of(recording);
    Optional<Comparison> change =
        startup
            .map(first -> Comparison.of(first.rig(), Analysis.of(first), recording.rig(), findings))
            .filter(one -> one.heatChange().isPresent());
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      ObjectNode root = FindingsJson.of(findings);
      change.ifPresent(one -> root.set("against_startup", ComparisonJson.of(one)));
      out.println(
          new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(root));
    } else {
      new FindingsText(recording, findings, units.choice(), new Moment(ZoneId.systemDefault()))
          .writeTo(out);
      change.ifPresent(
          one -> {
            out.println();
            out.println("Against the site's first run");
            new ComparisonText(one, units.choice()).writeTo(out);
          });
    }
    return Main.DONE;
  }
}
