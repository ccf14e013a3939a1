package heatwake.analysis.sensor;

/** Converts the raw values of one probe in the order in which they were taken. */
@FunctionalInterface
public interface Conversion {
  /**
   * The next value.
   *
   * @param raw in the SI unit of {@link SensorLoop#raw}; NaN is a fault
   * @param timeMs when it was taken, UTC milliseconds
   */
  Sensed next(double raw, long timeMs);
}
