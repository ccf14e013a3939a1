package heatwake.dashboard.command;

import heatwake.collector.store.Store;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.example.InventedStore;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;

/** What a command answered: exit status, standard output, standard error. */
record CommandCase(int status, String out, String err) {
  static CommandCase run(Object... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] arguments = new String[words.length];
    for (int i = 0; i < words.length; i++) {
      arguments[i] = words[i].toString();
    }
    int status =
        Main.commandLine()
            .setOut(new PrintWriter(out))
            .setErr(new PrintWriter(err))
            .execute(arguments);
    return new CommandCase(status, out.toString(), err.toString());
  }

  /** A database with one run of a few minutes, which has ended. */
  static Path database(Path file) {
    try (Store store = Store.open(file)) {
      store.endRun(InventedStore.begin(store, 5), InventedNight.minute(5));
    }
    return file;
  }

  /** A rig that can be recorded with, though nothing is plugged in. */
  static Path rig(Path file) throws IOException {
    return Files.writeString(
        file,
        """
        [[source]]
        name = "clips"
        serial = "/dev/none"
        [[probe]]
        channel = "water-in"
        source = "clips"
        field = "t1"
        unit = "Cel"
        """);
  }
}
