package heatwake.dashboard.command;

import heatwake.analysis.Analysis;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.Store;
import heatwake.dashboard.output.OutputFile;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.report.ReportPdf;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the report of a run as PDF. */
@Command(name = "report", description = "Writes the report of a run as PDF.")
final class ReportCommand implements Callable<Integer> {
  @Mixin private StoreOption store;

  @Mixin private RunOption run;

  @Mixin private UnitOption units;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "FILE.pdf",
      description = "Where to write it.")
  private Path output;

  @Override
  public Integer call() throws IOException {
    OutputFile target = OutputFile.of("-o", output).apartFromDatabase(store.file());
    Recording recording;
    try (Store open = Store.openExisting(store.file())) {
      recording = open.load(run.in(open));
    }
    ReportPdf report =
        new ReportPdf(
            recording, Analysis.of(recording), units.choice(), new Moment(ZoneId.systemDefault()));
    target.write(report::write);
    return Main.DONE;
  }
}
