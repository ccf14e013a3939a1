package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Quantity;

/**
 * A pulse counter read as a rate: litres per pulse give a flow, watt-hours per pulse a power. The
 * rate is the mean since the last reading, so a run's integral is exact; a single rate has the
 * resolution of one pulse per interval.
 *
 * @param measured flow or power
 * @param siPerPulse cubic metres or joules per pulse
 * @param register how the counter rolls over
 */
public record PulseRate(Quantity measured, double siPerPulse, CountRegister register)
    implements SensorLoop {

  public PulseRate {
    if (!(siPerPulse > 0)) {
      throw new IllegalArgumentException(
          "a pulse must stand for more than nothing, not " + siPerPulse);
    }
    if (measured != Quantity.FLOW && measured != Quantity.POWER) {
      throw new IllegalArgumentException(
          "pulses per time give a volume flow or a power, not a " + measured.label());
    }
  }

  @Override
  public Quantity raw() {
    return Quantity.RATIO;
  }

  @Override
  public Conversion begin() {
    return new Counting();
  }

  /** Half-width of the error of one rate: a pulse more or less in the interval. */
  public double resolutionSi(double intervalS) {
    return siPerPulse / intervalS;
  }

  private final class Counting implements Conversion {
    private double last = Double.NaN;
    private long lastMs;

    @Override
    public Sensed next(double count, long timeMs) {
      if (Double.isNaN(count)) {
        return FaultText.notANumber();
      }
      double before = last;
      double elapsedS = (timeMs - lastMs) / 1e3;
      if (!Double.isNaN(before) && elapsedS <= 0) {
        return new Sensed.Fault("two counts with no time between them give no rate");
      }
      last = count;
      lastMs = timeMs;
      if (Double.isNaN(before)) {
        return new Sensed.Pending();
      }
      CountRegister.Step step = register.between(before, count, elapsedS);
      if (step instanceof CountRegister.Step.Counted counted) {
        return new Sensed.Value(counted.counts() * siPerPulse / elapsedS);
      }
      return new Sensed.Fault(((CountRegister.Step.Reset) step).reason());
    }
  }
}
