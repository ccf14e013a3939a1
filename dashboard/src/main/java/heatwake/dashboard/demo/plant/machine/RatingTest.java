package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.fault.Health;

/**
 * The maker's test: a healthy heater run at fixed conditions until nothing changes any more. Its
 * figures go on the nameplate.
 *
 * @param airC air temperature
 * @param humidity relative humidity, 0 to 1
 * @param waterC entering water
 * @param heatW heat to the water
 * @param powerW electric power, fan and controls included
 */
public record RatingTest(double airC, double humidity, double waterC, double heatW, double powerW) {

  private static final double SEA_LEVEL_PA = 101_325;
  private static final int STEPS = 2400;

  /** Runs the test at full speed and design water flow. */
  public static RatingTest run(
      HeatPump heatPump, HeaterDesign design, double airC, double humidity, double waterC) {
    double moisture = MoistAir.humidityRatio(humidity * MoistAir.saturationPa(airC), SEA_LEVEL_PA);
    HeatPump.Surroundings around =
        new HeatPump.Surroundings(design.waterM3PerS(), waterC, airC, moisture, SEA_LEVEL_PA);
    HeatPump.Orders orders = new HeatPump.Orders(true, true, false, 1);
    Health health = new Health();
    for (int i = 0; i < STEPS; i++) {
      heatPump.step(1, orders, around, health);
    }
    HeaterDesign.Electric electric = design.electric();
    return new RatingTest(
        airC,
        humidity,
        waterC,
        heatPump.heatW(),
        heatPump.compressorW() + electric.fanW() + electric.standbyW());
  }

  /** The figures as a plate shows them. */
  RatingTest rounded() {
    return new RatingTest(
        airC, humidity, waterC, Math.rint(heatW / 100) * 100, Math.rint(powerW / 10) * 10);
  }
}
