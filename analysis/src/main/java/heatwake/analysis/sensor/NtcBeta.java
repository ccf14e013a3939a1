package heatwake.analysis.sensor;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.quantity.Quantity;

/**
 * Thermistor by its beta value: R = R25 exp(B (1/T - 1/298.15 K)). A B(25/50) value fits between
 * those two temperatures; at 0 Cel it can be several tenths of a kelvin off, so prefer {@link
 * NtcSteinhartHart} with coefficients from the maker's table.
 *
 * @param r25Ohm resistance at 25 Cel
 * @param betaK beta value
 */
public record NtcBeta(double r25Ohm, double betaK) implements SensorLoop {
  private static final double REFERENCE_K = 298.15;

  public NtcBeta {
    OutOfRangeException.check("thermistor resistance at 25 Cel", r25Ohm, "Ohm", 10, 10e6);
    OutOfRangeException.check("thermistor beta", betaK, "K", 1000, 8000);
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
    return Thermistor.sensed(ohm, 1 / (1 / REFERENCE_K + Math.log(ohm / r25Ohm) / betaK));
  }

  /** The resistance at a temperature above absolute zero. */
  public double resistanceOhm(double tK) {
    OutOfRangeException.check(
        "thermistor temperature", tK, "K", Thermistor.LOWEST_K, Thermistor.HIGHEST_K);
    return r25Ohm * Math.exp(betaK * (1 / tK - 1 / REFERENCE_K));
  }
}
