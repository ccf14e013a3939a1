package heatwake.collector.rig;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.site.CompressorSpeed;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rating;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a heater's nameplate from a rig. Limits are ours, set wide. */
final class HeaterReader {
  private static final List<String> KEYS =
      List.of(
          "label",
          "refrigerant",
          "flow-min",
          "flow-max",
          "voltage",
          "current-max",
          "breaker",
          "restart-delay",
          "pressure-max",
          "speed",
          "rating");

  /** A rated COP outside these is a mistyped heat or power. */
  private static final double LEAST_COP = 0.5;

  private static final double GREATEST_COP = 25;

  private HeaterReader() {}

  static Heater heater(TomlTable root) {
    Optional<TomlTable> table = root.table("heater");
    if (table.isEmpty()) {
      return Heater.UNKNOWN;
    }
    TomlTable heater = table.get().only(KEYS);
    OptionalDouble flowMin = heater.measure("flow-min", Quantity.FLOW, 1e-6, 0.1);
    OptionalDouble flowMax = heater.measure("flow-max", Quantity.FLOW, 1e-6, 0.1);
    if (flowMin.isPresent()
        && flowMax.isPresent()
        && flowMin.getAsDouble() > flowMax.getAsDouble()) {
      throw heater.mistake("flow-min", "flow-min is above flow-max; exchange them");
    }
    return new Heater(
        heater.text("label").orElse(Heater.UNKNOWN.label()),
        refrigerant(heater),
        flowMin,
        flowMax,
        heater.measure("voltage", Quantity.VOLTAGE, 50, 1000),
        heater.measure("current-max", Quantity.CURRENT, 0.1, 1000),
        heater.measure("breaker", Quantity.CURRENT, 0.1, 1000),
        heater.measure("restart-delay", Quantity.DURATION, 0, 7200),
        heater.measure("pressure-max", Quantity.PRESSURE, 1e5, 2e7),
        heater.choice("speed", CompressorSpeed.class),
        heater.tables("rating").stream().map(HeaterReader::rating).toList());
  }

  private static Optional<Refrigerant> refrigerant(TomlTable heater) {
    Optional<String> text = heater.text("refrigerant");
    try {
      return text.map(Refrigerant::of);
    } catch (IllegalArgumentException e) {
      throw heater.mistake("refrigerant", e.getMessage());
    }
  }

  private static Rating rating(TomlTable table) {
    table.only(List.of("air", "humidity", "water", "heat", "power"));
    Rating rating =
        new Rating(
            table.needMeasure("air", Quantity.TEMPERATURE, 233.15, 333.15),
            table.measure("humidity", Quantity.RATIO, 0, 1),
            table.needMeasure("water", Quantity.TEMPERATURE, 273.15, 333.15),
            table.needMeasure("heat", Quantity.POWER, 100, 1e6),
            table.measure("power", Quantity.POWER, 20, 5e5));
    if (rating.powerW().isPresent()) {
      double cop = rating.heatW() / rating.powerW().getAsDouble();
      if (cop < LEAST_COP || cop > GREATEST_COP) {
        throw table.mistake(
            "heat",
            "rated heat is "
                + Math.rint(cop * 100) / 100
                + " times the rated power; check both and their units (W or kW)");
      }
    }
    return rating;
  }
}
