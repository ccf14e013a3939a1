package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Quantity;

/**
 * A 4-20 mA transmitter, with the fault levels of NAMUR NE 43: {@value #FAULT_LOW_A} A and less or
 * {@value #FAULT_HIGH_A} A and more means a fault, {@value #VALID_LOW_A} to {@value #VALID_HIGH_A}
 * A is a measurement, between them the transmitter is at the end of its range.
 *
 * @param measured what it measures
 * @param lowSi value at 4 mA
 * @param highSi value at 20 mA; may be less than {@code lowSi}
 */
public record CurrentLoop(Quantity measured, double lowSi, double highSi) implements SensorLoop {
  static final double FAULT_LOW_A = 3.6e-3;
  static final double VALID_LOW_A = 3.8e-3;
  static final double VALID_HIGH_A = 20.5e-3;
  static final double FAULT_HIGH_A = 21.0e-3;

  private static final double ZERO_A = 4e-3;
  private static final double SPAN_A = 16e-3;

  public CurrentLoop {
    if (!(Math.abs(highSi - lowSi) > 0)) {
      throw new IllegalArgumentException(
          "a 4-20 mA loop needs two different end values, not "
              + lowSi
              + " and "
              + highSi
              + " "
              + measured.siCode());
    }
  }

  @Override
  public Quantity raw() {
    return Quantity.CURRENT;
  }

  @Override
  public Conversion begin() {
    return (raw, timeMs) -> convert(raw);
  }

  /** The value at a loop current. */
  public Sensed convert(double currentA) {
    if (Double.isNaN(currentA)) {
      return FaultText.notANumber();
    }
    if (currentA <= FAULT_LOW_A) {
      return fault(
          currentA, "at or below 3.6 mA: wire broken, loop without supply, or sensor fault");
    }
    if (currentA >= FAULT_HIGH_A) {
      return fault(currentA, "at or above 21 mA: short circuit or sensor fault");
    }
    if (currentA < VALID_LOW_A) {
      return fault(currentA, "below 3.8 mA: the transmitter is under its range");
    }
    if (currentA > VALID_HIGH_A) {
      return fault(currentA, "above 20.5 mA: the transmitter is over its range");
    }
    return new Sensed.Value(lowSi + (highSi - lowSi) * (currentA - ZERO_A) / SPAN_A);
  }

  private static Sensed.Fault fault(double currentA, String meaning) {
    return new Sensed.Fault(
        "loop current " + FaultText.plain(currentA * 1e3) + " mA is " + meaning);
  }
}
