package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Quantity;

/**
 * A 1-Wire digital thermometer. Its register holds exactly 85 Cel after power comes on, so 85 Cel
 * is no measurement when it comes first or out of the blue: then the sensor had lost its supply.
 * And -127 Cel is what common software reports when the sensor does not answer (common practice).
 */
public record DigitalThermometer() implements SensorLoop {
  private static final double ICE_POINT_K = 273.15;

  /** What its register holds before its first conversion. */
  public static final double POWER_ON_K = ICE_POINT_K + 85;

  private static final double NO_ANSWER_K = ICE_POINT_K - 127;
  private static final double LOWEST_K = ICE_POINT_K - 55;
  private static final double HIGHEST_K = ICE_POINT_K + 125;

  /** A sixteenth of a kelvin is the finest step the sensor has. */
  private static final double STEP_K = 1.0 / 16;

  /** A real 85 Cel is reached in steps; ours. */
  private static final double BELIEVABLE_STEP_K = 5;

  @Override
  public Quantity raw() {
    return Quantity.TEMPERATURE;
  }

  @Override
  public Quantity measured() {
    return Quantity.TEMPERATURE;
  }

  @Override
  public Conversion begin() {
    return new Guard();
  }

  /** The temperature of a 16-bit register in sixteenths of a degree, two's complement. */
  public static double fromRegisterK(int register) {
    return ICE_POINT_K + (short) register * STEP_K;
  }

  private static final class Guard implements Conversion {
    private double lastGoodK = Double.NaN;

    @Override
    public Sensed next(double tK, long timeMs) {
      if (Double.isNaN(tK)) {
        return FaultText.notANumber();
      }
      if (Math.abs(tK - NO_ANSWER_K) < STEP_K / 2) {
        return new Sensed.Fault("-127 Cel: the sensor does not answer; check wire and connector");
      }
      if (!(tK >= LOWEST_K && tK <= HIGHEST_K)) {
        return new Sensed.Fault(
            FaultText.cel(tK) + " is outside the sensor's -55 to 125 Cel; check the wiring");
      }
      if (Math.abs(tK - POWER_ON_K) < STEP_K / 2
          && !(Math.abs(lastGoodK - tK) <= BELIEVABLE_STEP_K)) {
        return new Sensed.Fault(
            "85 Cel is what the sensor holds after power-on, not a measurement; if it comes back,"
                + " the sensor's supply is loose");
      }
      lastGoodK = tK;
      return new Sensed.Value(tK);
    }
  }
}
