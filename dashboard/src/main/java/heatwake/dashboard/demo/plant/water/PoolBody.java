package heatwake.dashboard.demo.plant.water;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.air.Weather;

/**
 * The heat of the pool: evaporation (Smith, Löf, Jones, Solar Energy 53 (1994), from memory),
 * convection, radiation to the sky, sun. Well mixed while the pump runs.
 */
public final class PoolBody {
  private static final double PA_PER_MMHG = 133.322;
  private static final double STEFAN_BOLTZMANN = 5.670374e-8;
  private static final double EMISSIVITY = 0.95;
  private static final double SUN_TAKEN = 0.85;
  private static final double COVER_EVAPORATION = 0.05;
  private static final double COVER_CONVECTION = 0.35;

  private final Basin basin;
  private double waterC;
  private double lossW;

  public PoolBody(Basin basin) {
    this.basin = basin;
    this.waterC = basin.startC();
  }

  /** Moves on, with the heat that the heater gives. */
  public void step(double dtS, double heatW, double lossFactor, Weather weather) {
    double vapourPa = MoistAir.vapourPa(weather.humidityRatio(), weather.pressurePa());
    double deficitMmHg = Math.max(0, MoistAir.saturationPa(waterC) - vapourPa) / PA_PER_MMHG;
    double evaporation = (30.6 + 32.1 * weather.windMPerS()) * deficitMmHg / 3.6;
    double convection = (3.1 + 4.1 * weather.windMPerS()) * (waterC - weather.airC());
    double radiation = EMISSIVITY * STEFAN_BOLTZMANN * (fourth(waterC) - fourth(weather.skyC()));
    double sun = SUN_TAKEN * weather.sunWPerM2();
    double perM2 =
        basin.covered()
            ? COVER_EVAPORATION * evaporation
                + COVER_CONVECTION * (convection + radiation)
                - sun / 2
            : evaporation + convection + radiation - sun;
    lossW = perM2 * basin.surfaceM2() * lossFactor;
    double capacity = basin.volumeM3() * PoolWater.density(waterC) * PoolWater.heat(waterC);
    waterC += (heatW - lossW) * dtS / capacity;
  }

  private static double fourth(double celsius) {
    return Math.pow(celsius + 273.15, 4);
  }

  public double waterC() {
    return waterC;
  }

  /** What the pool loses to air and sky, less what the sun gives. */
  public double lossW() {
    return lossW;
  }
}
