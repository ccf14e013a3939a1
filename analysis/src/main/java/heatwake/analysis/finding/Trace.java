package heatwake.analysis.finding;

/**
 * A derived quantity over time, for charts.
 *
 * @param kind what it is
 * @param startMs first instant, UTC milliseconds
 * @param stepMs time between instants
 * @param values SI values, NaN where there are none; shared, not to be written to
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, shared on purpose
public record Trace(Kind kind, long startMs, long stepMs, double[] values) {

  /** The derived quantities there are. */
  public enum Kind {
    /** Zeroed temperature rise of the water, K. */
    RISE,
    /** Water through the heater by the way used, m3/s. */
    HEATER_FLOW,
    /** Heat given to the water, W. */
    HEAT,
    /** Part of the total flow that goes through the heater, 0 to 1. */
    HEATER_SHARE,
    /** Condensing temperature, K. */
    CONDENSING,
    /** Evaporating temperature, K. */
    EVAPORATING
  }
}
