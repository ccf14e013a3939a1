package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Writes the report of a run as PDF. */
@Command(name = "report", description = "Writes the report of a run as PDF.")
final class ReportCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
