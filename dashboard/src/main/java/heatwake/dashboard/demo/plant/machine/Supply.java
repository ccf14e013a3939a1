package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.air.Wander;
import heatwake.dashboard.demo.plant.fault.Health;
import java.util.random.RandomGenerator;

/** Electric supply and what the heater draws from it. */
public final class Supply {
  private static final double STANDBY_FACTOR = 0.55;
  private static final double LOCKED_ROTOR = 4.5;
  private static final double HUM_POWER = 1.6;

  private final HeaterDesign.Electric electric;
  private final double ratedW;
  private final double dropPerA;
  private final Wander wander;
  private double powerW;
  private double currentA;
  private double voltageV;
  private boolean ran;

  public Supply(HeaterDesign design, RandomGenerator random) {
    this.electric = design.electric();
    this.ratedW = design.ratedHeatW() / 5.5;
    double ratedA = electric.current(ratedW, electric.nominalV(), electric.powerFactor());
    this.dropPerA = 0.012 * electric.nominalV() / ratedA;
    this.wander = new Wander(0.008, 1800, random);
    this.voltageV = electric.nominalV();
  }

  /**
   * Moves on.
   *
   * @param compressorW power of the compressor, zero at rest
   * @param humming the motor stands with a locked rotor
   * @param besideW another load on the same meter
   */
  public void step(
      double dtS,
      double compressorW,
      HeatPump.Orders orders,
      boolean humming,
      boolean softStart,
      double besideW,
      Health health) {
    double fanW = orders.fan() ? electric.fanW() * health.fanPower : 0;
    boolean runs = orders.compressor();
    double idleW = electric.standbyW() + (runs ? 0 : electric.crankcaseW());
    powerW = compressorW + fanW + idleW + besideW + (humming ? HUM_POWER * ratedW : 0);
    double openV = electric.nominalV() * health.voltage * (1 + wander.step(dtS));
    double factor = runs || orders.fan() || besideW > 0 ? electric.powerFactor() : STANDBY_FACTOR;
    double drawnA = electric.current(powerW, voltageV, factor);
    boolean inrush = runs && !ran && !softStart;
    if (inrush || humming) {
      drawnA = LOCKED_ROTOR * electric.current(ratedW, voltageV, electric.powerFactor());
    }
    ran = runs;
    currentA = drawnA;
    voltageV = openV - dropPerA * drawnA;
  }

  /** Active power of the whole heater, and of what else is on its meter. */
  public double powerW() {
    return powerW;
  }

  /** Line current. */
  public double currentA() {
    return currentA;
  }

  /** Line to line. */
  public double voltageV() {
    return voltageV;
  }
}
