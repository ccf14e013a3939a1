package heatwake.dashboard.command;

import heatwake.collector.csv.CsvExport;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.Store;
import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes a run as CSV. */
@Command(name = "export", description = "Writes a run as CSV, exactly as import reads it.")
final class ExportCommand implements Callable<Integer> {
  @Mixin private StoreOption database;

  @Option(names = "--run", paramLabel = "ID", required = true, description = "Number of the run.")
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
    try (Store store = Store.openExisting(database.file())) {
      String rig = store.rigText(run);
      if (rigOut != null) {
        Files.writeString(rigOut, rig);
      }
      if (out == null) {
        // Not closed: stdout is not ours to close.
        Writer writer =
            new BufferedWriter(
                new OutputStreamWriter(
                    new FileOutputStream(FileDescriptor.out), StandardCharsets.UTF_8));
        CsvExport.write(store, run, writer);
        writer.flush();
      } else {
        writeFile(store);
      }
    }
    return Main.DONE;
  }

  private void writeFile(Store store) throws IOException {
    Path folder = out.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new MistakeException(out + ": its folder does not exist; make it or name another");
    }
    try (Writer writer = Files.newBufferedWriter(out, StandardCharsets.UTF_8)) {
      CsvExport.write(store, run, writer);
    }
  }
}
