package heatwake.dashboard.command;

import heatwake.collector.csv.CsvExport;
import heatwake.collector.store.Store;
import heatwake.dashboard.output.OutputFile;
import heatwake.dashboard.output.StandardOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes a run as CSV. */
@Command(name = "export", description = "Writes a run as CSV, exactly as import reads it.")
final class ExportCommand implements Callable<Integer> {
  @Mixin private StoreOption database;

  @Option(
      names = "--run",
      paramLabel = "ID",
      converter = RunNumber.class,
      required = true,
      description = "Number of the run.")
  private long run;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Where to write it; default stdout.")
  private Path out;

  @Option(
      names = "--rig-out",
      paramLabel = "RIG.toml",
      description = "Also writes the rig file the run was recorded with.")
  private Path rigOut;

  @Override
  public Integer call() throws IOException {
    Optional<OutputFile> csv = target("-o", out);
    Optional<OutputFile> rig = target("--rig-out", rigOut);
    if (csv.isPresent() && rig.isPresent()) {
      csv.get().apartFromOutput(rig.get());
    }
    try (Store store = Store.openExisting(database.file())) {
      String rigText = store.rigText(run);
      if (csv.isPresent()) {
        csv.get().write(stream -> write(store, stream));
      }
      if (rig.isPresent()) {
        rig.get().write(stream -> stream.write(rigText.getBytes(StandardCharsets.UTF_8)));
      }
      if (csv.isEmpty()) {
        StandardOutput.write(stream -> write(store, stream));
      }
    }
    return Main.DONE;
  }

  private Optional<OutputFile> target(String option, Path file) {
    return Optional.ofNullable(file)
        .map(path -> OutputFile.of(option, path).apartFromDatabase(database.file()));
  }

  private void write(Store store, OutputStream stream) throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
    CsvExport.write(store, run, writer);
    writer.flush();
  }
}
