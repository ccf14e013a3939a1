package heatwake.dashboard.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Records a site's probes until stopped. */
@Command(name = "record", description = "Records a site's probes until stopped.")
final class RecordCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    throw new UnsupportedOperationException("not built yet");
  }
}
