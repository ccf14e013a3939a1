package heatwake.analysis.quantity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A unit of measure: a UCUM code (case sensitive), its everyday spellings, and the affine map to
 * SI.
 *
 * <p>Factors: SI Brochure (9th edition) and NIST SP 811 (2008) appendix B; those of gallon, foot,
 * mile, psi and Btu(IT) are exact by definition. Temperature and temperature difference are
 * separate quantities, so that 1.8 degF of difference is 1 K and never picks up the offset.
 *
 * @param quantity what it measures
 * @param code UCUM code, the spelling that is written
 * @param spellings other spellings that are read
 * @param factor SI value of one unit
 * @param offset SI value of zero units
 */
public record Unit(
    Quantity quantity, String code, List<String> spellings, double factor, double offset) {

  private static final double US_GALLON_M3 = 231 * 0.0254 * 0.0254 * 0.0254;
  private static final double FOOT_M = 0.3048;
  private static final double PSI_PA = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
  private static final double BTU_IT_J = 1055.05585262;
  private static final double ICE_POINT_K = 273.15;
  private static final double DEGREE_FAHRENHEIT_K = 5.0 / 9.0;

  private static final List<Unit> ALL =
      List.of(
          new Unit(Quantity.TEMPERATURE, "Cel", List.of("degC", "°C"), 1, ICE_POINT_K),
          new Unit(
              Quantity.TEMPERATURE,
              "[degF]",
              List.of("degF", "°F"),
              DEGREE_FAHRENHEIT_K,
              ICE_POINT_K - 32 * DEGREE_FAHRENHEIT_K),
          new Unit(Quantity.TEMPERATURE, "K", List.of(), 1, 0),
          linear(Quantity.TEMPERATURE_DIFFERENCE, "K", 1, "Cel", "degC", "°C"),
          linear(Quantity.TEMPERATURE_DIFFERENCE, "[degF]", DEGREE_FAHRENHEIT_K, "degF", "°F"),
          linear(Quantity.FLOW, "L/min", 1e-3 / 60, "l/min"),
          linear(Quantity.FLOW, "m3/h", 1.0 / 3600, "m³/h"),
          linear(Quantity.FLOW, "L/s", 1e-3, "l/s"),
          linear(Quantity.FLOW, "m3/s", 1, "m³/s"),
          linear(Quantity.FLOW, "[gal_us]/min", US_GALLON_M3 / 60, "gal/min", "gpm"),
          linear(Quantity.PRESSURE, "kPa", 1e3),
          linear(Quantity.PRESSURE, "MPa", 1e6),
          linear(Quantity.PRESSURE, "bar", 1e5),
          linear(Quantity.PRESSURE, "Pa", 1),
          linear(Quantity.PRESSURE, "[psi]", PSI_PA, "psi"),
          linear(Quantity.POWER, "W", 1),
          linear(Quantity.POWER, "kW", 1e3),
          linear(Quantity.POWER, "[Btu_IT]/h", BTU_IT_J / 3600, "Btu/h"),
          linear(Quantity.ENERGY, "kW.h", 3.6e6, "kWh"),
          linear(Quantity.ENERGY, "W.h", 3.6e3, "Wh"),
          linear(Quantity.ENERGY, "J", 1),
          linear(Quantity.ENERGY, "MJ", 1e6),
          linear(Quantity.CURRENT, "A", 1),
          linear(Quantity.CURRENT, "mA", 1e-3),
          linear(Quantity.VOLTAGE, "V", 1),
          linear(Quantity.VOLTAGE, "mV", 1e-3),
          linear(Quantity.RESISTANCE, "Ohm", 1, "ohm", "Ω"),
          linear(Quantity.RESISTANCE, "kOhm", 1e3, "kohm", "kΩ"),
          linear(Quantity.RATIO, "%", 1e-2),
          linear(Quantity.RATIO, "1", 1),
          linear(Quantity.STATE, "1", 1),
          linear(Quantity.SALINITY, "g/kg", 1e-3),
          linear(Quantity.SALINITY, "kg/kg", 1),
          linear(Quantity.SALINITY, "[ppm]", 1e-6, "ppm"),
          linear(Quantity.VOLUME, "m3", 1, "m³"),
          linear(Quantity.VOLUME, "L", 1e-3, "l"),
          linear(Quantity.VOLUME, "[gal_us]", US_GALLON_M3, "gal"),
          linear(Quantity.AREA, "m2", 1, "m²"),
          linear(Quantity.AREA, "[sft_i]", FOOT_M * FOOT_M, "ft2", "ft²"),
          linear(Quantity.DURATION, "s", 1),
          linear(Quantity.DURATION, "ms", 1e-3),
          linear(Quantity.DURATION, "min", 60),
          linear(Quantity.DURATION, "h", 3600),
          linear(Quantity.SPEED, "m/s", 1),
          linear(Quantity.SPEED, "km/h", 1 / 3.6),
          linear(Quantity.SPEED, "[mi_i]/h", 5280 * FOOT_M / 3600, "mph"),
          linear(Quantity.LENGTH, "m", 1),
          linear(Quantity.LENGTH, "[ft_i]", FOOT_M, "ft"));

  private static Unit linear(Quantity quantity, String code, double factor, String... spellings) {
    return new Unit(quantity, code, List.of(spellings), factor, 0);
  }

  /**
   * Finds the unit of a quantity by any of its spellings.
   *
   * @throws UnknownUnitException naming the spellings that would be understood
   */
  public static Unit of(Quantity quantity, String spelling) {
    String text = spelling.strip();
    for (Unit unit : ALL) {
      if (unit.quantity == quantity && unit.isSpelt(text)) {
        return unit;
      }
    }
    throw new UnknownUnitException(
        "unit \""
            + spelling
            + "\" does not measure "
            + quantity.label()
            + "; use one of "
            + String.join(", ", spellings(quantity)));
  }

  /** Every unit known, in the order in which they are documented. */
  public static List<Unit> all() {
    return ALL;
  }

  private static Set<String> spellings(Quantity quantity) {
    Set<String> found = new LinkedHashSet<>();
    for (Unit unit : ALL) {
      if (unit.quantity == quantity) {
        found.add(unit.code);
        found.addAll(unit.spellings);
      }
    }
    return found;
  }

  /** All spellings read for this unit, the written one first. */
  public List<String> allSpellings() {
    List<String> result = new ArrayList<>();
    result.add(code);
    result.addAll(spellings);
    return result;
  }

  private boolean isSpelt(String text) {
    return code.equals(text) || spellings.contains(text);
  }

  /** Converts a value in this unit to SI. */
  public double toSi(double value) {
    return value * factor + offset;
  }

  /** Converts an SI value to this unit. */
  public double fromSi(double si) {
    return (si - offset) / factor;
  }

  /**
   * Converts a value in this unit to another unit of the same quantity; to itself, without touching
   * a single bit.
   */
  public double to(Unit target, double value) {
    if (target.quantity != quantity) {
      throw new IllegalArgumentException(
          "cannot convert " + quantity.label() + " to " + target.quantity.label());
    }
    return target.equals(this) ? value : target.fromSi(toSi(value));
  }
}
