package heatwake.analysis.quantity;

/**
 * A pressure counted from vacuum. What saturation equations take; a gauge shows {@link
 * GaugePressure}.
 *
 * @param pa pascal, not negative
 */
public record AbsolutePressure(double pa) {
  /** One standard atmosphere. */
  public static final AbsolutePressure STANDARD_ATMOSPHERE = new AbsolutePressure(101_325);

  private static final double HIGHEST_PA = 1e9;

  public AbsolutePressure {
    OutOfRangeException.check("absolute pressure", pa, "Pa", 0, HIGHEST_PA);
  }

  /** The same counted from the pressure of the air around the gauge. */
  public GaugePressure gauge(AbsolutePressure atmosphere) {
    return new GaugePressure(pa - atmosphere.pa);
  }
}
