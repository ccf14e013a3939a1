package heatwake.analysis.sensor;

/** Letter of a thermocouple pair (IEC 60584-1:2013). */
public enum ThermocoupleType {
  /** Nickel-chromium against nickel-aluminium, -200 to 1372 Cel. */
  K,
  /** Copper against constantan, -200 to 400 Cel. */
  T
}
