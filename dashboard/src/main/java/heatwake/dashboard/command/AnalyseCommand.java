package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Says what was found in a run. */
@Command(name = "analyse", description = "Says what was found in a run.")
final class AnalyseCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
