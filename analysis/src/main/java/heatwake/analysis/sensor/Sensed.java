package heatwake.analysis.sensor;

/** What a loop makes of one raw value. */
public sealed interface Sensed {
  /**
   * A good value.
   *
   * @param si the quantity at the sensor, in SI
   */
  record Value(double si) implements Sensed {}

  /**
   * No value, because the loop, the wiring or the sensor is at fault.
   *
   * @param reason what was seen, the limit, and the likely cause, in plain words
   */
  record Fault(String reason) implements Sensed {}

  /** No value yet: the first count of a counter, from which no rate follows. */
  record Pending() implements Sensed {}
}
