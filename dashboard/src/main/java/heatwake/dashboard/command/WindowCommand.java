package heatwake.dashboard.command;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.Store;
import heatwake.dashboard.window.Dashboard;
import heatwake.dashboard.window.Display;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Opens the dashboard. */
@Command(
    name = "window",
    description =
        "Opens the dashboard on a database: live while a run is being recorded, and on any past run.")
final class WindowCommand implements Callable<Integer> {
  @Mixin private StoreOption store;
  @Mixin private UnitOption units;

  @Override
  public Integer call() throws InterruptedException {
    if (!Display.isThere()) {
      throw new MistakeException(
          "there is no display to open a window on; \"heatwake report --db "
              + store.file()
              + " --run ID -o FILE.pdf\" writes the same findings on paper");
    }
    // Said on the command line rather than in a window that shows nothing.
    Store.openExisting(store.file()).close();
    Dashboard.open(store.file(), units.choice()).awaitClosed();
    return Main.DONE;
  }
}
