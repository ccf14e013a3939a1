package heatwake.dashboard.command;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.Store;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Adds a note to a run. */
@Command(name = "note", description = "Adds a note to the run being recorded, or to --run.")
final class NoteCommand implements Callable<Integer> {
  private static final int LONGEST = 4000;

  @Spec private CommandSpec spec;
  @Mixin private StoreOption database;

  @Option(
      names = "--run",
      paramLabel = "ID",
      converter = RunNumber.class,
      description = "Number of the run; default the run being recorded.")
  private Long run;

  @Parameters(paramLabel = "TEXT", description = "What you did or saw: \"bypass moved\".")
  private String text;

  @Override
  public Integer call() {
    if (text.isBlank()) {
      throw new MistakeException("the note is empty; say what you did or saw");
    }
    if (text.length() > LONGEST) {
      throw new MistakeException(
          "the note has " + text.length() + " letters; at most " + LONGEST + " fit");
    }
    try (Store store = Store.openExistingToWrite(database.file())) {
      long into = run != null ? run : beingRecorded(store);
      store.addNote(into, System.currentTimeMillis(), text.strip());
      spec.commandLine().getErr().println("noted in run " + into);
    }
    return Main.DONE;
  }

  private long beingRecorded(Store store) {
    List<Long> open = store.runsWithoutEnd();
    if (open.isEmpty()) {
      throw new MistakeException(
          database.file() + ": no run is being recorded; name one with --run");
    }
    if (open.size() > 1) {
      throw new MistakeException(
          database.file()
              + ": the runs "
              + open.stream().map(id -> Long.toString(id)).collect(Collectors.joining(", "))
              + " are being recorded; name one with --run");
    }
    return open.get(0);
  }
}
