package heatwake.dashboard.demo.plant.sensor;

import heatwake.dashboard.demo.plant.Tap;

/**
 * Something wrong with a probe.
 *
 * @param tap the probe
 * @param kind what is wrong
 * @param level how bad, see the kind
 * @param startS from when, seconds into the run
 */
public record ProbeTrouble(Tap tap, Kind kind, double level, double startS) {
  /** What can be wrong. */
  public enum Kind {
    /** Reads too high by the level. */
    OFFSET,
    /** Reads what the tap of the other probe of the pair has. */
    SWAPPED,
    /** Hangs in the air: the level is the air's share of the reading. */
    SLIPPED,
    /** Repeats its last reading for good. */
    STUCK,
    /** Broken wire: reports the level instead of a reading. */
    OPEN,
    /** Says nothing for the level in minutes. */
    SILENT
  }
}
