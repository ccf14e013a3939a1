package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Compares two runs of one heater on equal conditions. */
@Command(name = "compare", description = "Compares two runs of one heater on equal conditions.")
final class CompareCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
