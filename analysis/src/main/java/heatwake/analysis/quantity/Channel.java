package heatwake.analysis.quantity;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One measured quantity at one place. The id is used in rig files, CSV headers, the database and
 * every output.
 *
 * <p>Each channel carries the range outside which a reading cannot be true of a pool heater that
 * still holds together (limits are ours, set wide): such a reading is kept but takes no part in the
 * analysis.
 */
public enum Channel {
  WATER_IN("water-in", "water entering the heater", Quantity.TEMPERATURE, -15, 95),
  WATER_OUT("water-out", "water leaving the heater", Quantity.TEMPERATURE, -15, 95),
  WATER_RETURN(
      "water-return",
      "line to the pool after heater water and bypass water have mixed",
      Quantity.TEMPERATURE,
      -15,
      95),
  WATER_POOL("water-pool", "pool body", Quantity.TEMPERATURE, -15, 95),
  FLOW_HEATER("flow-heater", "water through the heater", Quantity.FLOW, -50, 5000),
  FLOW_TOTAL("flow-total", "water through the pump and filter", Quantity.FLOW, -50, 5000),
  PRESSURE_FILTER("pressure-filter", "filter inlet, gauge", Quantity.PRESSURE, -100, 1000),
  PRESSURE_DISCHARGE(
      "pressure-discharge", "refrigerant high side, gauge", Quantity.PRESSURE, -100, 8000),
  PRESSURE_SUCTION(
      "pressure-suction", "refrigerant low side, gauge", Quantity.PRESSURE, -100, 8000),
  TEMP_DISCHARGE("temp-discharge", "compressor discharge line", Quantity.TEMPERATURE, -60, 200),
  TEMP_LIQUID("temp-liquid", "liquid line after the condenser", Quantity.TEMPERATURE, -60, 150),
  TEMP_SUCTION("temp-suction", "suction line at the compressor", Quantity.TEMPERATURE, -60, 150),
  AIR_IN("air-in", "air entering the evaporator", Quantity.TEMPERATURE, -60, 80),
  AIR_OUT("air-out", "air leaving the evaporator", Quantity.TEMPERATURE, -60, 80),
  AIR_AMBIENT("air-ambient", "outdoor air away from the heater", Quantity.TEMPERATURE, -60, 70),
  HUMIDITY_IN("humidity-in", "relative humidity of the entering air", Quantity.RATIO, -2, 105),
  POWER("power", "active electric power of the heater", Quantity.POWER, -500, 200_000),
  CURRENT("current", "line current of the heater", Quantity.CURRENT, -1, 500),
  VOLTAGE("voltage", "supply voltage at the heater, line to line", Quantity.VOLTAGE, -5, 1000),
  ENERGY("energy", "running total of a kWh meter on the heater", Quantity.ENERGY, 0, 1e9),
  WIND_SPEED("wind-speed", "wind at the water surface", Quantity.SPEED, -0.5, 90),
  PUMP_ON("pump-on", "pool pump running (0/1)", Quantity.STATE, 0, 1),
  FLOW_SWITCH("flow-switch", "heater's flow switch closed (0/1)", Quantity.STATE, 0, 1);

  private final String id;
  private final String place;
  private final Quantity quantity;
  private final double lowestStored;
  private final double highestStored;

  Channel(String id, String place, Quantity quantity, double lowestStored, double highestStored) {
    this.id = id;
    this.place = place;
    this.quantity = quantity;
    this.lowestStored = lowestStored;
    this.highestStored = highestStored;
  }

  /** The fixed name, for instance {@code water-in}. */
  public String id() {
    return id;
  }

  /** Where the quantity is measured, in plain words. */
  public String place() {
    return place;
  }

  public Quantity quantity() {
    return quantity;
  }

  /** The unit in which readings of this channel are stored and exported. */
  public Unit storedUnit() {
    return quantity.storedUnit();
  }

  /** Whether a value, in the stored unit, can be true of this channel at all. */
  public boolean isPossible(double stored) {
    return stored >= lowestStored && stored <= highestStored;
  }

  /** The possible range in words, for messages: {@code "-15 to 95 Cel"}. */
  public String possibleRange() {
    return plain(lowestStored) + " to " + plain(highestStored) + Numeral.after(storedUnit().code());
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  /** The channel with this id, if there is one. */
  public static Optional<Channel> find(String id) {
    return Arrays.stream(values()).filter(channel -> channel.id.equals(id)).findFirst();
  }

  /**
   * The channel with this id.
   *
   * @throws IllegalArgumentException listing the ids there are
   */
  public static Channel of(String id) {
    return find(id)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no channel is called \"" + id + "\"; the channels are " + ids()));
  }

  private static String ids() {
    return Arrays.stream(values()).map(Channel::id).collect(Collectors.joining(", "));
  }

  @Override
  public String toString() {
    return id;
  }
}
