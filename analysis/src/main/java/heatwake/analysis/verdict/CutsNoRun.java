package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;

/**
 * A pressure that its own switch cuts short is more than what an approach brings with it: it is
 * what stops the heater, so it stands as a flag of its own.
 */
final class CutsNoRun implements Condition {
  /** One stop may be chance; ours. */
  private static final int FEWEST_STOPS = 2;

  /** A stop is seen within this much after the greatest pressure; ours. */
  private static final long AFTER_MS = 10_000;

  @Override
  public String words() {
    return "unless the compressor stopped at it twice or more";
  }

  @Override
  public boolean holds(Flag cause, Flag flag, FlagsOfRun run) {
    return run.cycles().stream()
            .flatMapToLong(cycle -> cycle.stopMs().stream())
            .filter(stopMs -> stopMs >= flag.startMs() && stopMs <= flag.endMs() + AFTER_MS)
            .count()
        < FEWEST_STOPS;
  }
}
