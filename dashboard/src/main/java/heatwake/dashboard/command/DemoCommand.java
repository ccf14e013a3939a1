package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Runs the whole job on a simulated site. */
@Command(name = "demo", description = "Runs the whole job on a simulated site.")
final class DemoCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
