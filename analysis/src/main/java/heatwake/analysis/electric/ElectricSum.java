package heatwake.analysis.electric;

import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.uncertainty.Estimate;

/** Electric energy summed over instants, systematic and random parts kept apart. */
public final class ElectricSum {
  private final ElectricStream stream;
  private int instants;
  private int stretches;
  private int last = -2;
  private double powerW;
  private double bridgedW;

  public ElectricSum(ElectricStream stream) {
    this.stream = stream;
  }

  /** Adds instant {@code i}, if its power is known; says whether it is. */
  public boolean add(int i) {
    double power = stream.powerW().values()[i];
    if (Double.isNaN(power)) {
      return false;
    }
    if (i != last + 1) {
      stretches++;
    }
    last = i;
    instants++;
    powerW += power;
    if (stream.powerW().isBridged(i)) {
      bridgedW += power;
    }
    return true;
  }

  /** Adds instants from {@code from} up to but not including {@code to}. */
  public ElectricSum add(int from, int to) {
    for (int i = from; i < to; i++) {
      add(i);
    }
    return this;
  }

  public boolean isEmpty() {
    return instants == 0;
  }

  /** Time that was summed over. */
  public double seconds() {
    return instants * stream.stepS();
  }

  /** Energy. */
  public Estimate energyJ() {
    double dt = stream.stepS();
    double systematic =
        Math.hypot(
            stream.uncertainty().share() * powerW, stream.uncertainty().absolute() * instants);
    double bridged = Bridging.SHARE * bridgedW;
    double random = stream.noiseW() * Math.sqrt(instants);
    double edges = stream.edgeJ() * Math.sqrt(2.0 * stretches);
    double together = Math.hypot(Math.hypot(systematic, random), bridged);
    return new Estimate(powerW * dt, Math.hypot(together * dt, edges));
  }

  /** Mean power over the time summed. */
  public Estimate meanW() {
    return energyJ().times(1 / seconds());
  }
}
