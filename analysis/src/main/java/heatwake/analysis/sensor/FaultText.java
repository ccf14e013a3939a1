package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Numeral;
import java.math.MathContext;

/** The sentences of faults that several loops share. */
final class FaultText {
  private static final double ICE_POINT_K = 273.15;
  private static final MathContext READABLE = new MathContext(4);

  private FaultText() {}

  static Sensed.Fault notANumber() {
    return new Sensed.Fault("no number came from the probe; check its wiring and supply");
  }

  static Sensed.Fault open(double ohm, double mostOhm) {
    return new Sensed.Fault(
        ohms(ohm)
            + " is above the sensor's "
            + plain(mostOhm)
            + " Ohm: open circuit; check the wire and the connector");
  }

  static Sensed.Fault shorted(double ohm, double leastOhm) {
    return new Sensed.Fault(
        plain(ohm)
            + " Ohm is below the sensor's "
            + plain(leastOhm)
            + " Ohm: short circuit; check the wire for damage and water");
  }

  static String ohms(double ohm) {
    return Double.isInfinite(ohm) ? "an endless resistance" : plain(ohm) + " Ohm";
  }

  static String cel(double tK) {
    return plain(tK - ICE_POINT_K) + " Cel";
  }

  static String plain(double value) {
    return Numeral.of(value, READABLE);
  }
}
