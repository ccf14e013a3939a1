package heatwake.dashboard.demo.plant.air;

import java.util.random.RandomGenerator;

/** A quantity that wanders around zero and always comes back (Ornstein-Uhlenbeck process). */
public final class Wander {
  private final double deviation;
  private final double timeS;
  private final RandomGenerator random;
  private double value;

  /**
   * @param deviation standard deviation
   * @param timeS how long it remembers
   */
  public Wander(double deviation, double timeS, RandomGenerator random) {
    this.deviation = deviation;
    this.timeS = timeS;
    this.random = random;
    this.value = deviation * random.nextGaussian();
  }

  /** Moves on and returns the value. */
  public double step(double dtS) {
    double share = dtS / timeS;
    value += -value * share + deviation * Math.sqrt(2 * share) * random.nextGaussian();
    return value;
  }
}
