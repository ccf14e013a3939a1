package heatwake.analysis.site;

import heatwake.analysis.refrigerant.Refrigerant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the heater's nameplate states. Anything may be missing.
 *
 * @param label what the person calls the unit
 * @param refrigerant what it is charged with
 * @param flowMinM3PerS least water flow through the heater
 * @param flowMaxM3PerS greatest water flow through the heater
 * @param voltageV nominal supply voltage
 * @param currentMaxA greatest line current
 * @param breakerA rating of the breaker that protects the circuit
 * @param restartDelayS least time between a stop and the next start
 * @param pressureMaxPa greatest permitted high-side gauge pressure
 * @param speed whether the compressor can run slower
 * @param ratings rated heat and power at stated conditions
 */
public record Heater(
    String label,
    Optional<Refrigerant> refrigerant,
    OptionalDouble flowMinM3PerS,
    OptionalDouble flowMaxM3PerS,
    OptionalDouble voltageV,
    OptionalDouble currentMaxA,
    OptionalDouble breakerA,
    OptionalDouble restartDelayS,
    OptionalDouble pressureMaxPa,
    Optional<CompressorSpeed> speed,
    List<Rating> ratings) {
  private static final double MOST_FAN_OF_HEAT = 0.025;
  private static final double MOST_FAN_W = 250;

  /** A heater of which the rig says nothing. */
  public static final Heater UNKNOWN =
      new Heater(
          "heater",
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          List.of());

  public Heater {
    ratings = List.copyOf(ratings);
  }

  /** Whether it is known never to run slower by choice. */
  public boolean isFixedSpeed() {
    return speed.filter(CompressorSpeed.FIXED::equals).isPresent();
  }

  /** The greatest heat of the rating points, W; empty where no rating is stated. */
  public OptionalDouble greatestRatedHeatW() {
    return ratings.stream().mapToDouble(Rating::heatW).max();
  }

  /** The greatest electric power of the rating points, if any states one. */
  public OptionalDouble greatestRatedW() {
    return ratings.stream()
        .map(Rating::powerW)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max();
  }

  /**
   * What no fan of it draws, W: fans take 6 to 15 W for each kilowatt of rated heat, those of small
   * heaters up to 30 (common practice; limits ours). Infinite where no rating is stated.
   */
  public double beyondFanW() {
    double heatW = greatestRatedHeatW().orElse(Double.POSITIVE_INFINITY);
    return Math.max(MOST_FAN_W, MOST_FAN_OF_HEAT * heatW);
  }
}
