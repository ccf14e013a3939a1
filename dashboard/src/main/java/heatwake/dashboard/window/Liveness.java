package heatwake.dashboard.window;

import java.util.OptionalLong;

/**
 * How a run's readings stand to the present. Readings may carry a clock that is not this machine's
 * (a probe's own, a replayed night's), so what counts is when this machine last saw the run grow.
 *
 * @param newestMs time of the newest reading, on the readings' clock
 * @param sinceGrowthMs time since the run was last seen to grow; empty once the run is ended
 */
record Liveness(long newestMs, OptionalLong sinceGrowthMs) {
  /**
   * A recorder that stores nothing for this long has lost its probes, its supply or its disk; ours.
   */
  private static final long SILENT_MS = 60_000;

  boolean isRecording() {
    return sinceGrowthMs.isPresent();
  }

  /** Whether a run that has not been ended gets no readings. */
  boolean isSilent() {
    return sinceGrowthMs.isPresent() && sinceGrowthMs.getAsLong() > SILENT_MS;
  }

  /** The present on the readings' clock; the end of a run that is over. */
  long nowMs() {
    return newestMs + sinceGrowthMs.orElse(0);
  }
}
