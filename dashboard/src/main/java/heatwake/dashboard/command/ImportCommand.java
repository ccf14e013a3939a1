package heatwake.dashboard.command;

import heatwake.collector.csv.CsvImport;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import heatwake.dashboard.output.OutputFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Stores a CSV file as a run. */
@Command(name = "import", description = "Stores a CSV file as a run.")
final class ImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private StoreOption database;

  @Option(
      names = "--rig",
      paramLabel = "RIG.toml",
      required = true,
      description = "The site it was measured at; sources in it do not matter.")
  private Path rig;

  @Parameters(
      paramLabel = "DATA.csv",
      description = "Column time (ISO-8601 with offset or Z), then <channel> [<unit>] columns.")
  private Path csv;

  @Override
  public Integer call() {
    RigFile rigFile = RigReader.readForImport(rig);
    refuseAsDatabase(csv, "the CSV");
    refuseAsDatabase(rig, "the rig");
    CsvImport.Imported imported = CsvImport.run(() -> Store.open(database.file()), rigFile, csv);
    imported.remarks().forEach(remark -> spec.commandLine().getErr().println(csv + ": " + remark));
    spec.commandLine().getOut().println("run " + imported.run());
    return Main.DONE;
  }

  /** SQLite would make a database of an empty file. */
  private void refuseAsDatabase(Path read, String what) {
    if (Files.exists(database.file()) && OutputFile.isSame(database.file(), read)) {
      throw new MistakeException(
          database.file() + ": is " + what + ", not a database; name another file with --db");
    }
  }
}
