package heatwake.analysis.sensor;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.quantity.Quantity;

/**
 * Platinum resistance thermometer by IEC 60751: R = R0 (1 + A t + B t^2), below 0 Cel with the term
 * C (t - 100) t^3; t in Cel, {@value #LOWEST_CEL} to {@value #HIGHEST_CEL} Cel.
 *
 * @param r0Ohm resistance at 0 Cel, 100 or 1000
 * @param leadOhm resistance of both leads together where only two wires are used, else 0. On a
 *     Pt100 0.1 Ohm is 0.26 K, on a Pt1000 0.026 K.
 */
public record Rtd(double r0Ohm, double leadOhm) implements SensorLoop {
  static final double LOWEST_CEL = -200;
  static final double HIGHEST_CEL = 850;

  private static final double A = 3.9083e-3;
  private static final double B = -5.775e-7;
  private static final double C = -4.183e-12;
  private static final double ICE_POINT_K = 273.15;
  private static final double CLOSE_ENOUGH_K = 1e-9;
  private static final int MOST_STEPS = 20;

  public Rtd {
    OutOfRangeException.check("resistance at 0 Cel", r0Ohm, "Ohm", 10, 10_000);
    OutOfRangeException.check("lead resistance", leadOhm, "Ohm", 0, 0.2 * r0Ohm);
  }

  /** Pt100 with three or four wires. */
  public static Rtd pt100() {
    return new Rtd(100, 0);
  }

  /** Pt1000. */
  public static Rtd pt1000() {
    return new Rtd(1000, 0);
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

  /** The temperature at a resistance as measured, leads included. */
  public Sensed convert(double ohm) {
    if (Double.isNaN(ohm)) {
      return FaultText.notANumber();
    }
    double least = r0Ohm * ratio(LOWEST_CEL) + leadOhm;
    double most = r0Ohm * ratio(HIGHEST_CEL) + leadOhm;
    if (ohm < least) {
      return FaultText.shorted(ohm, least);
    }
    if (ohm > most) {
      return FaultText.open(ohm, most);
    }
    return new Sensed.Value(ICE_POINT_K + celsiusAt((ohm - leadOhm) / r0Ohm));
  }

  /**
   * The resistance of the element alone at a temperature.
   *
   * @throws OutOfRangeException outside the range of the standard
   */
  public double resistanceOhm(double tK) {
    OutOfRangeException.check(
        "thermometer temperature", tK, "K", ICE_POINT_K + LOWEST_CEL, ICE_POINT_K + HIGHEST_CEL);
    return r0Ohm * ratio(tK - ICE_POINT_K);
  }

  private static double ratio(double cel) {
    double quadratic = 1 + cel * (A + cel * B);
    return cel < 0 ? quadratic + C * (cel - 100) * cel * cel * cel : quadratic;
  }

  private static double celsiusAt(double ratio) {
    // The quadratic holds from 0 Cel up; below it is a near start for Newton's method.
    double cel = (-A + Math.sqrt(A * A - 4 * B * (1 - ratio))) / (2 * B);
    if (ratio >= 1) {
      return cel;
    }
    for (int i = 0; i < MOST_STEPS; i++) {
      double slope = A + 2 * B * cel + C * cel * cel * (4 * cel - 300);
      double step = (ratio(cel) - ratio) / slope;
      cel -= step;
      if (Math.abs(step) < CLOSE_ENOUGH_K) {
        break;
      }
    }
    return cel;
  }
}
