package heatwake.collector.unattended;

import heatwake.analysis.finding.Flag;
import java.io.File;
import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs a command of the person's choice for each flag. What the flag says is passed in environment
 * variables, never as a part of the command, so nothing that a probe sends can become one.
 */
public final class FlagCommand implements FlagListener {
  private static final Logger LOG = LoggerFactory.getLogger(FlagCommand.class);
  private static final long PATIENCE_S = 30;

  private final String command;

  /** A command for the shell. */
  public FlagCommand(String command) {
    this.command = command;
  }

  @Override
  public void arose(String site, long run, Flag flag) {
    ProcessBuilder builder =
        new ProcessBuilder("sh", "-c", command)
            .redirectInput(Redirect.from(new File("/dev/null")))
            .redirectErrorStream(true)
            .redirectOutput(Redirect.DISCARD);
    builder
        .environment()
        .putAll(
            Map.of(
                "HEATWAKE_SITE", site,
                "HEATWAKE_RUN", Long.toString(run),
                "HEATWAKE_RULE", flag.rule(),
                "HEATWAKE_SEVERITY", flag.severity().id(),
                "HEATWAKE_START", Instant.ofEpochMilli(flag.startMs()).toString(),
                "HEATWAKE_EVIDENCE", flag.evidence(),
                "HEATWAKE_NEXT_CHECK", flag.nextCheck()));
    try {
      Process process = builder.start();
      if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        LOG.warn("the command for flags took longer than {} s and was ended", PATIENCE_S);
      } else if (process.exitValue() != 0) {
        LOG.warn("the command for flags ended with status {}", process.exitValue());
      }
    } catch (IOException e) {
      LOG.warn("the command for flags could not be run: {}", e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
