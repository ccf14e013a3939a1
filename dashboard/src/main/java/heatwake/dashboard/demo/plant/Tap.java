package heatwake.dashboard.demo.plant;

import heatwake.dashboard.demo.plant.air.MoistAir;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/** Where a probe can be clipped, and what is true there, in the unit in which probes report it. */
@SuppressWarnings("ImmutableEnumChecker") // its functions hold no state
public enum Tap {
  WATER_IN("water-in", "Cel", Plant::waterInC),
  WATER_OUT("water-out", "Cel", Plant::waterOutC),
  WATER_RETURN("water-return", "Cel", Plant::returnC),
  WATER_POOL("water-pool", "Cel", Plant::poolReadingC),
  FLOW_HEATER("flow-heater", "L/min", plant -> plant.heaterFlowM3PerS() * 6e4),
  FLOW_TOTAL("flow-total", "L/min", plant -> plant.totalFlowM3PerS() * 6e4),
  PRESSURE_FILTER("pressure-filter", "kPa", plant -> plant.hydraulics().filterPa() / 1e3),
  PRESSURE_DISCHARGE(
      "pressure-discharge", "kPa", plant -> gaugeKPa(plant, plant.heatPump().dischargePa())),
  PRESSURE_SUCTION(
      "pressure-suction", "kPa", plant -> gaugeKPa(plant, plant.heatPump().suctionPa())),
  TEMP_DISCHARGE("temp-discharge", "Cel", plant -> plant.heatPump().dischargeC()),
  TEMP_LIQUID("temp-liquid", "Cel", plant -> plant.heatPump().liquidC()),
  TEMP_SUCTION("temp-suction", "Cel", plant -> plant.heatPump().suctionC()),
  AIR_IN("air-in", "Cel", plant -> plant.heatPump().airInC()),
  AIR_OUT("air-out", "Cel", plant -> plant.heatPump().airOutC()),
  AIR_AMBIENT("air-ambient", "Cel", plant -> plant.weather().airC()),
  HUMIDITY_IN("humidity-in", "%", Tap::humidityIn),
  POWER("power", "W", plant -> plant.supply().powerW()),
  CURRENT("current", "A", plant -> plant.supply().currentA()),
  VOLTAGE("voltage", "V", plant -> plant.supply().voltageV()),
  ENERGY("energy", "kW.h", plant -> plant.energyJ() / 3.6e6),
  WIND_SPEED("wind-speed", "m/s", plant -> plant.weather().windMPerS()),
  PUMP_ON("pump-on", "1", plant -> plant.pumpOn() ? 1 : 0),
  FLOW_SWITCH("flow-switch", "1", plant -> plant.flowSwitch() ? 1 : 0);

  private final String channel;
  private final String unit;
  private final ToDoubleFunction<Plant> truth;

  Tap(String channel, String unit, ToDoubleFunction<Plant> truth) {
    this.channel = channel;
    this.unit = unit;
    this.truth = truth;
  }

  private static double gaugeKPa(Plant plant, double absolutePa) {
    return (absolutePa - plant.weather().pressurePa()) / 1e3;
  }

  private static double humidityIn(Plant plant) {
    double vapourPa =
        MoistAir.vapourPa(plant.heatPump().airInHumidityRatio(), plant.weather().pressurePa());
    return Math.min(100, 100 * vapourPa / MoistAir.saturationPa(plant.heatPump().airInC()));
  }

  /** Id of the channel it is reported on. */
  public String channel() {
    return channel;
  }

  /** UCUM code of the unit. */
  public String unit() {
    return unit;
  }

  /** What is true there now. */
  public double truth(Plant plant) {
    return truth.applyAsDouble(plant);
  }

  /** Whether it only says yes or no. */
  public boolean isState() {
    return this == PUMP_ON || this == FLOW_SWITCH;
  }

  /** Whether it is a temperature. */
  public boolean isTemperature() {
    return "Cel".equals(unit);
  }

  /** The tap of a channel. */
  public static Tap of(String channel) {
    return Arrays.stream(values())
        .filter(tap -> tap.channel.equals(channel))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no tap is called " + channel));
  }
}
