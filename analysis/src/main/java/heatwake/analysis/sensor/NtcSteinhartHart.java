package heatwake.analysis.sensor;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.quantity.Quantity;

/**
 * Thermistor by Steinhart and Hart (Deep-Sea Research 15, 1968, 497-503): 1/T = a + b ln R + c (ln
 * R)^3, R in ohm, T in kelvin.
 *
 * @param a constant term, 1/K
 * @param b factor of ln R, 1/K
 * @param c factor of (ln R)^3, 1/K
 */
public record NtcSteinhartHart(double a, double b, double c) implements SensorLoop {
  private static final double LEAST_OHM = 1;
  private static final double MOST_OHM = 100e6;

  public NtcSteinhartHart {
    OutOfRangeException.check("Steinhart-Hart a", a, "1/K", -0.01, 0.01);
    OutOfRangeException.check("Steinhart-Hart b", b, "1/K", 1e-6, 0.01);
    OutOfRangeException.check("Steinhart-Hart c", c, "1/K", -1e-5, 1e-5);
  }

  /**
   * The equation through three points of a maker's table.
   *
   * @throws IllegalArgumentException when two points coincide
   */
  public static NtcSteinhartHart through(
      double ohm1, double t1K, double ohm2, double t2K, double ohm3, double t3K) {
    double l1 = Math.log(ohm1);
    double l2 = Math.log(ohm2);
    double l3 = Math.log(ohm3);
    if (l1 == l2 || l2 == l3 || l1 == l3) {
      throw new IllegalArgumentException(
          "a thermistor needs three different resistances, not "
              + ohm1
              + ", "
              + ohm2
              + ", "
              + ohm3
              + " Ohm");
    }
    double slope2 = (1 / t2K - 1 / t1K) / (l2 - l1);
    double slope3 = (1 / t3K - 1 / t1K) / (l3 - l1);
    double c = (slope3 - slope2) / (l3 - l2) / (l1 + l2 + l3);
    double b = slope2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
    return new NtcSteinhartHart(1 / t1K - l1 * (b + c * l1 * l1), b, c);
  }

  @Override
  public Quantity raw() {
    return Quantity.RESISTANCE;
  }

  @Override
  public Quantity measured() {
    return Quantity.TEMPERATURE;
  }

  @Override
  public Conversion begin() {
    return (raw, timeMs) -> convert(raw);
  }

  /** The temperature at a resistance. */
  public Sensed convert(double ohm) {
    double log = Math.log(Math.min(Math.max(ohm, LEAST_OHM), MOST_OHM));
    return Thermistor.sensed(ohm, 1 / (a + log * (b + c * log * log)));
  }
}
