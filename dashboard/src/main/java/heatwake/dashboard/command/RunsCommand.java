package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Lists the runs. */
@Command(name = "runs", description = "Lists the runs.")
final class RunsCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
