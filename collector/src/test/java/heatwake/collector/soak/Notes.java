package heatwake.collector.soak;

import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Path;

/** Notes that a person writes meanwhile, and counts. */
final class Notes {
  private final Path database;
  private int written;

  Notes(Path database) {
    this.database = database;
  }

  void write() {
    try (Store store = Store.openExisting(database)) {
      store.addNote(store.runsWithoutEnd().get(0), System.currentTimeMillis(), "note " + written);
      written++;
    }
  }

  int written() {
    return written;
  }

  int found() {
    try (Store store = Store.openExisting(database)) {
      return store.runs().stream()
          .mapToLong(RunSummary::id)
          .mapToInt(run -> store.load(run).notes().size())
          .sum();
    }
  }
}
