package heatwake.dashboard.chart;

import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.dashboard.present.DisplayUnit;
import heatwake.dashboard.present.UnitChoice;
import java.util.List;
import java.util.function.Function;

/** The strip charts there are, in the order in which they are stacked. */
@SuppressWarnings("ImmutableEnumChecker") // the list is unmodifiable, the function holds no state
public enum Strip {
  WATER(
      "Water",
      units -> units.of(Quantity.TEMPERATURE),
      2,
      Line.of(Channel.WATER_IN),
      Line.of(Channel.WATER_OUT),
      Line.of(Channel.WATER_RETURN),
      Line.of(Channel.WATER_POOL)),
  RISE(
      "Water temperature rise",
      units -> units.of(Quantity.TEMPERATURE_DIFFERENCE),
      2,
      Line.of(Trace.Kind.RISE)),
  HEAT(
      "Heat and power",
      units -> units.of(Quantity.POWER),
      2,
      Line.of(Trace.Kind.HEAT),
      new Line.OfExpectedHeat(),
      Line.of(Channel.POWER)),
  FLOW(
      "Water flow",
      units -> units.of(Quantity.FLOW),
      40,
      Line.of(Channel.FLOW_HEATER),
      Line.of(Channel.FLOW_TOTAL),
      Line.of(Trace.Kind.HEATER_FLOW)),
  SHARE(
      "Share of the flow through the heater",
      units -> units.of(Quantity.RATIO),
      100,
      Line.of(Trace.Kind.HEATER_SHARE)),
  REFRIGERANT_PRESSURE(
      "Refrigerant pressure, gauge",
      UnitChoice::refrigerantPressure,
      0.5,
      Line.of(Channel.PRESSURE_DISCHARGE),
      Line.of(Channel.PRESSURE_SUCTION)),
  REFRIGERANT_TEMPERATURE(
      "Refrigerant",
      units -> units.of(Quantity.TEMPERATURE),
      10,
      Line.of(Trace.Kind.CONDENSING),
      Line.of(Trace.Kind.EVAPORATING),
      Line.of(Channel.TEMP_DISCHARGE),
      Line.of(Channel.TEMP_LIQUID),
      Line.of(Channel.TEMP_SUCTION)),
  AIR(
      "Air",
      units -> units.of(Quantity.TEMPERATURE),
      5,
      Line.of(Channel.AIR_IN),
      Line.of(Channel.AIR_OUT),
      Line.of(Channel.AIR_AMBIENT)),
  HUMIDITY(
      "Relative humidity", units -> units.of(Quantity.RATIO), 100, Line.of(Channel.HUMIDITY_IN)),
  CURRENT("Line current", units -> units.of(Quantity.CURRENT), 2, Line.of(Channel.CURRENT)),
  VOLTAGE("Supply voltage", units -> units.of(Quantity.VOLTAGE), 20, Line.of(Channel.VOLTAGE)),
  FILTER(
      "Filter pressure, gauge",
      units -> units.of(Quantity.PRESSURE),
      20,
      Line.of(Channel.PRESSURE_FILTER)),
  ENERGY("Energy meter", units -> units.of(Quantity.ENERGY), 1, Line.of(Channel.ENERGY)),
  WIND("Wind at the water", units -> units.of(Quantity.SPEED), 2, Line.of(Channel.WIND_SPEED)),
  STATES(
      "Switches",
      units -> units.of(Quantity.STATE),
      1,
      Line.of(Channel.PUMP_ON),
      Line.of(Channel.FLOW_SWITCH));

  private final String title;
  private final Function<UnitChoice, DisplayUnit> unit;

  /** In the metric unit shown. */
  private final double shortest;

  private final List<Line> lines;

  Strip(String title, Function<UnitChoice, DisplayUnit> unit, double shortest, Line... lines) {
    this.title = title;
    this.unit = unit;
    this.shortest = shortest;
    this.lines = List.of(lines);
  }

  /** Its heading. */
  public String title() {
    return title;
  }

  DisplayUnit unit(UnitChoice units) {
    return unit.apply(units);
  }

  /** The shortest stretch of its axis worth showing, in the unit shown. */
  double shortest(UnitChoice units) {
    return shortest * unit(UnitChoice.METRIC).unit().factor() / unit(units).unit().factor();
  }

  List<Line> lines() {
    return lines;
  }

  /** Whether it has lanes of on and off in place of lines. */
  boolean isLanes() {
    return this == STATES;
  }

  /** Whether its axis is always the whole of 0 to 100 %. */
  boolean isPercent() {
    return this == SHARE || this == HUMIDITY;
  }

  /** Whether its axis always shows zero, because how much of it there is matters. */
  boolean isFromZero() {
    return switch (this) {
      case HEAT, FLOW, CURRENT, FILTER, WIND -> true;
      default -> false;
    };
  }
}
