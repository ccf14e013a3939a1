package heatwake.dashboard.demo.plant.air;

import java.util.random.RandomGenerator;

/** Outdoor air from moment to moment: a daily course with gusts and passing clouds. */
public final class Weather {
  static final double SEA_LEVEL = 101_325;
  private static final double WARMEST_HOUR = 15;
  private static final double MOST_MOIST = 0.98;

  private final Climate climate;
  private final double pressurePa;
  private final Wander temperature;
  private final Wander gusts;
  private double airC;
  private double humidityRatio;
  private double windMPerS;
  private double sunWPerM2;
  private double skyC;

  /**
   * @param altitudeM height above sea level
   */
  public Weather(Climate climate, double altitudeM, RandomGenerator random) {
    this.climate = climate;
    // Barometric formula of the standard atmosphere's lowest layer.
    this.pressurePa = SEA_LEVEL * Math.pow(1 - 2.25577e-5 * altitudeM, 5.2559);
    this.temperature = new Wander(climate.restlessK(), 900, random);
    this.gusts = new Wander(0.35, 240, random);
  }

  /**
   * Moves on.
   *
   * @param hourOfDay local solar hour, 0 to 24
   */
  public void step(double dtS, double hourOfDay) {
    double course = Math.cos(2 * Math.PI * (hourOfDay - WARMEST_HOUR) / 24);
    airC = climate.meanC() + climate.swingK() * course + temperature.step(dtS);
    double most = MoistAir.humidityRatio(MOST_MOIST * MoistAir.saturationPa(airC), pressurePa);
    humidityRatio = Math.min(climate.humidityRatio(), most);
    double calmAtNight = 0.8 + 0.2 * course;
    windMPerS = climate.windMPerS() * calmAtNight * Math.exp(gusts.step(dtS) - 0.06);
    double elevation = Math.sin(Math.PI * (hourOfDay - 5.5) / 13);
    boolean day = hourOfDay > 5.5 && hourOfDay < 18.5;
    sunWPerM2 = day ? 850 * elevation * (0.2 + 0.8 * climate.clearness()) : 0;
    skyC = airC - 3 - 15 * climate.clearness();
  }

  public double airC() {
    return airC;
  }

  /** Moisture, kg of vapour per kg of dry air. */
  public double humidityRatio() {
    return humidityRatio;
  }

  /** Relative humidity, 0 to 1. */
  public double relativeHumidity() {
    return MoistAir.vapourPa(humidityRatio, pressurePa) / MoistAir.saturationPa(airC);
  }

  public double windMPerS() {
    return windMPerS;
  }

  /** Sun on a level surface. */
  public double sunWPerM2() {
    return sunWPerM2;
  }

  /** Temperature at which the sky radiates. */
  public double skyC() {
    return skyC;
  }

  public double pressurePa() {
    return pressurePa;
  }
}
