package heatwake.analysis.sensor;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.quantity.Quantity;

/**
 * A thermocouple whose voltage is reported raw. The voltage of the cold junction is added, then the
 * reference function inverted: adding the junction's temperature to the result instead would be
 * wrong by tenths of a kelvin.
 *
 * <p>A rise of 3 K is only 0.12 mV: two thermocouples are unfit for the temperature rise of a pool
 * heater.
 *
 * @param type letter of the pair
 * @param coldJunctionK temperature of the terminals at which the voltage is measured
 */
public record Thermocouple(ThermocoupleType type, double coldJunctionK) implements SensorLoop {
  private static final double ICE_POINT_K = 273.15;

  public Thermocouple {
    OutOfRangeException.check(
        "cold junction temperature", coldJunctionK, "K", ICE_POINT_K - 40, ICE_POINT_K + 85);
  }

  @Override
  public Quantity raw() {
    return Quantity.VOLTAGE;
  }

  @Override
  public Quantity measured() {
    return Quantity.TEMPERATURE;
  }

  @Override
  public Conversion begin() {
    return (raw, timeMs) -> convert(raw);
  }

  /** The temperature of the measuring junction at a voltage across the terminals. */
  public Sensed convert(double voltageV) {
    if (Double.isNaN(voltageV)) {
      return FaultText.notANumber();
    }
    ReferenceFunction function = ReferenceFunction.of(type);
    double atJunction = function.millivolt(coldJunctionK - ICE_POINT_K);
    double mv = voltageV * 1e3 + atJunction;
    double least = function.millivolt(function.lowestCel());
    double most = function.millivolt(function.highestCel());
    if (mv < least || mv > most) {
      return new Sensed.Fault(
          FaultText.plain(voltageV * 1e3)
              + " mV is outside the "
              + FaultText.plain(least - atJunction)
              + " to "
              + FaultText.plain(most - atJunction)
              + " mV of a type "
              + type
              + " thermocouple: broken wire or wrong type");
    }
    return new Sensed.Value(ICE_POINT_K + function.celsius(mv));
  }

  /**
   * The voltage across the terminals at a temperature of the measuring junction.
   *
   * @throws OutOfRangeException outside the range of the type
   */
  public double voltageV(double tK) {
    ReferenceFunction function = ReferenceFunction.of(type);
    OutOfRangeException.check(
        "thermocouple temperature",
        tK,
        "K",
        ICE_POINT_K + function.lowestCel(),
        ICE_POINT_K + function.highestCel());
    return (function.millivolt(tK - ICE_POINT_K) - function.millivolt(coldJunctionK - ICE_POINT_K))
        / 1e3;
  }
}
