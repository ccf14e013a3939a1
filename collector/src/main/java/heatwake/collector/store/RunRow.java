package heatwake.collector.store;

import java.util.OptionalLong;

/** A run as it stands in its table. */
record RunRow(long beganMs, OptionalLong endedMs, String site, String rigName, String rigText) {
  /** Whether this is that run some time later, and not another one under the same number. */
  boolean continues(RunRow earlier) {
    return beganMs == earlier.beganMs && rigText.equals(earlier.rigText);
  }
}
