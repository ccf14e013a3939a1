package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Quantity;

/**
 * A counting register read as a running total, such as a kWh meter: the total goes on rising
 * through roll-over and reset. After a reset one fault says so, and the total then carries on from
 * what was certain.
 *
 * @param measured energy or volume
 * @param siPerCount joules or cubic metres per count
 * @param register how it rolls over
 */
public record RegisterTotal(Quantity measured, double siPerCount, CountRegister register)
    implements SensorLoop {

  public RegisterTotal {
    if (!(siPerCount > 0)) {
      throw new IllegalArgumentException(
          "a count must stand for more than nothing, not " + siPerCount);
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

  private final class Counting implements Conversion {
    private double last = Double.NaN;
    private long lastMs;
    private double total;

    @Override
    public Sensed next(double count, long timeMs) {
      if (Double.isNaN(count)) {
        return FaultText.notANumber();
      }
      if (count < 0) {
        return new Sensed.Fault(
            "the counter reads " + FaultText.plain(count) + "; a counter does not go below zero");
      }
      double before = last;
      double elapsedS = (timeMs - lastMs) / 1e3;
      last = count;
      lastMs = timeMs;
      if (Double.isNaN(before)) {
        total = count;
        return new Sensed.Value(total * siPerCount);
      }
      CountRegister.Step step = register.between(before, count, elapsedS);
      if (step instanceof CountRegister.Step.Counted counted) {
        total += counted.counts();
        return new Sensed.Value(total * siPerCount);
      }
      CountRegister.Step.Reset reset = (CountRegister.Step.Reset) step;
      total += reset.countsSince();
      return new Sensed.Fault(reset.reason());
    }
  }
}
