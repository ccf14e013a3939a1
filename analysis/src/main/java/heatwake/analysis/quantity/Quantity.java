package heatwake.analysis.quantity;

/**
 * A kind of measured or stated magnitude. Each has one unit in which the analysis computes (SI) and
 * one in which readings are stored and exported.
 */
public enum Quantity {
  TEMPERATURE("temperature", "K", "Cel"),
  TEMPERATURE_DIFFERENCE("temperature difference", "K", "K"),
  FLOW("volume flow", "m3/s", "L/min"),
  PRESSURE("pressure", "Pa", "kPa"),
  POWER("power", "W", "W"),
  ENERGY("energy", "J", "kW.h"),
  CURRENT("current", "A", "A"),
  VOLTAGE("voltage", "V", "V"),
  RESISTANCE("resistance", "Ohm", "Ohm"),
  RATIO("ratio", "1", "%"),
  STATE("state", "1", "1"),
  SALINITY("salinity", "kg/kg", "g/kg"),
  VOLUME("volume", "m3", "m3"),
  AREA("area", "m2", "m2"),
  DURATION("time", "s", "s"),
  SPEED("speed", "m/s", "m/s"),
  LENGTH("length", "m", "m");

  private final String label;
  private final String siCode;
  private final String storedCode;

  Quantity(String label, String siCode, String storedCode) {
    this.label = label;
    this.siCode = siCode;
    this.storedCode = storedCode;
  }

  /** What a person calls it, for messages. */
  public String label() {
    return label;
  }

  /** Symbol of the SI unit used inside the analysis. */
  public String siCode() {
    return siCode;
  }

  /** The unit in which readings of this quantity are stored, exported and first offered. */
  public Unit storedUnit() {
    return Unit.of(this, storedCode);
  }
}
