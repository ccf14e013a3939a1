package heatwake.analysis.quantity;

/**
 * A pressure counted from that of the air around the gauge: what gauges show and probes send.
 *
 * @param pa pascal; negative below atmospheric pressure
 */
public record GaugePressure(double pa) {
  /**
   * The same counted from vacuum.
   *
   * @throws OutOfRangeException when it would lie below vacuum
   */
  public AbsolutePressure absolute(AbsolutePressure atmosphere) {
    return new AbsolutePressure(pa + atmosphere.pa());
  }
}
