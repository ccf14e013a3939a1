package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Lists serial ports and what they say. */
@Command(name = "ports", description = "Lists serial ports and what they say.")
final class PortsCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
