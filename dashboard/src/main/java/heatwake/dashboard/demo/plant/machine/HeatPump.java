package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.fault.Health;

/** A simulated heat pump: what goes in, what comes out. */
public interface HeatPump {
  /**
   * What surrounds it.
   *
   * @param waterM3PerS water through it
   * @param waterInC water entering
   * @param airC air away from it
   * @param humidityRatio moisture of that air
   * @param pressurePa of that air
   */
  record Surroundings(
      double waterM3PerS, double waterInC, double airC, double humidityRatio, double pressurePa) {}

  /**
   * What the controller tells it.
   *
   * @param speed of the compressor, a share of full speed
   */
  record Orders(boolean fan, boolean compressor, boolean defrost, double speed) {}

  /** Moves on. */
  void step(double dtS, Orders orders, Surroundings around, Health health);

  /** Heat given to the water by the condenser; negative in a reversed cycle. */
  double heatW();

  /** Electric power of the compressor. */
  double compressorW();

  /** High-side pressure at the compressor, Pa absolute. */
  double dischargePa();

  /** Low-side pressure at the compressor, Pa absolute. */
  double suctionPa();

  /** Discharge line. */
  double dischargeC();

  /** Liquid line. */
  double liquidC();

  /** Suction line. */
  double suctionC();

  /** Mean evaporating temperature, for the controller. */
  double evaporatingC();

  /** Mean condensing temperature, for the controller. */
  double condensingC();

  /** Air entering the coil. */
  double airInC();

  /** Moisture of the air entering the coil. */
  double airInHumidityRatio();

  /** Air leaving the coil. */
  double airOutC();

  /** Ice on the coil. */
  double iceKg();
}
